// Package rules judges a plan that is worked out. A rule is a value with one function; it
// stands in the file of its name, and All lists them. Everyone who checks a plan comes
// through Run.
package rules

import (
	"slices"
	"strings"
	"sync"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

// Rule is one mistake that plancheck knows. Its name says the fault in words, so that
// `allow NAME "reason"` reads as a sentence.
type Rule struct {
	Name     string
	Group    Group
	Severity diag.Severity // of its findings, where they do not say otherwise
	Summary  string        // the fault in one line: lower case, no full stop

	Doc     string // why it matters at the bench, and what to do
	Sources string // where its figures come from
	Sound   string // the sound construction most like the fault; the fixture sound.plan shows it
	Bad     string // a short plan that raises this one finding
	Good    string // the same plan put right: it raises none

	// Figures are the thresholds that it judges by, each with its source.
	Figures []*Figure

	// Always is set where no `allow` silences it: without its mend there is no piece to
	// judge, or it is about `allow` itself.
	Always bool

	// Check looks at the whole plan and reports. It is nil where reading the plan finds the
	// fault already.
	Check func(*Pass)
}

// Group says what a rule is about, in the order in which lists of rules are printed.
type Group uint8

const (
	Reading Group = iota + 1 // what is found while a plan is read and worked out
	Hygiene
	Lengths
	Tenons
	Joints
	Cuts
	Movement
	Layups
	Doors
	Drawers
	Structure
	Making
	Moving
)

func (g Group) String() string {
	return [...]string{
		"", "the text of a plan", "a plan in order", "lengths", "mortise and tenon", "other joints", "cuts against one another",
		"movement", "layups and pressing", "doors, hinges and latches", "drawers", "loads and use",
		"making it", "moving and putting together",
	}[g]
}

// Pass is one rule's look at one plan.
type Pass struct {
	Plan  *plan.Plan
	Blind bool // something could not be read or worked out: the plan says more than is here

	rule   *Rule
	limits limits
	found  []diag.Finding
}

// Report adds a finding. Its rule, and its severity unless it says one, are the rule's own.
func (p *Pass) Report(f diag.Finding) {
	f.Rule = p.rule.Name
	if f.Severity == 0 {
		f.Severity = p.rule.Severity
	}
	p.found = append(p.found, f)
}

// Run reads a plan, works it out and judges it. The findings are in reading order, less
// what the plan allows.
func Run(f *diag.File, open plan.Opener) (*plan.Plan, []diag.Finding) {
	tree, unread := lang.Parse(f)
	p, unresolved := plan.Resolve(tree, open)
	return p, judge(p, All, slices.Concat(unread, unresolved))
}

// judge adds what the rules find to what was found while the plan was read.
func judge(p *plan.Plan, all []*Rule, read []diag.Finding) []diag.Finding {
	limits, misset := readLimits(p, all)
	found := slices.Concat(read, misset)
	blind := broken(read) || p.Unchecked > 0
	passes := make([]Pass, len(all))
	var busy sync.WaitGroup // rules only read the plan, so that they may look at it side by side
	for i, r := range all {
		if r.Check != nil {
			passes[i] = Pass{Plan: p, Blind: blind, rule: r, limits: limits}
			busy.Go(func() { r.Check(&passes[i]) })
		}
	}
	busy.Wait()
	for i := range passes {
		found = append(found, passes[i].found...)
	}
	found = fold(p, silence(p, all, found, blind))
	diag.Sort(found)
	return found
}

// broken reports whether something of the plan could not be read, so that rules saw less
// than the plan says.
func broken(read []diag.Finding) bool {
	return slices.ContainsFunc(read, func(f diag.Finding) bool { return f.Severity == diag.Error })
}

// Find is the rule of that name; nil if there is none.
func Find(name string) *Rule { return find(All, name) }

func find(all []*Rule, name string) *Rule {
	i, ok := slices.BinarySearchFunc(all, name, func(r *Rule, name string) int { return strings.Compare(r.Name, name) })
	if !ok {
		return nil
	}
	return all[i]
}

// Nearest is the name of the rule that a name is most likely meant to be; "" where none is
// near.
func Nearest(name string) string { return nearest(All, name) }

func nearest(all []*Rule, name string) string {
	names := make([]string, len(all))
	for i, r := range all {
		names[i] = r.Name
	}
	return diag.Nearest(name, names)
}
