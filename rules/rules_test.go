package rules_test

// The driver: every rule is whole, its Bad raises it and its Good does not, every fixture
// raises what its `# want` comments say on the lines where they stand, every project is
// found as it is, and every fix mends what it says. To add a case, write the plan with its
// wants, accept the golden with GOLDIE_UPDATE=true, and read the diff.

import (
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/sebdah/goldie/v2"

	"plancheck/internal/diag"
	"plancheck/rules"
)

const (
	ruleFixtures = "../fixtures/rules"
	projects     = "../fixtures/projects"
)

func TestRulesAreWhole(t *testing.T) {
	kebab := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	if !slices.IsSortedFunc(rules.All, func(a, b *rules.Rule) int { return strings.Compare(a.Name, b.Name) }) {
		t.Error("All is not in the order of the names")
	}
	seen := make(map[string]bool)
	for _, r := range rules.All {
		t.Run(r.Name, func(t *testing.T) {
			if seen[r.Name] {
				t.Error("two rules have this name")
			}
			seen[r.Name] = true
			if !kebab.MatchString(r.Name) {
				t.Error("the name is not words joined by hyphens")
			}
			if r.Severity.String() == "none" || r.Group.String() == "" {
				t.Error("no severity or no group")
			}
			oneLine(t, "Summary", r.Summary)
			written(t, "Doc", r.Doc)
			written(t, "Sources", r.Sources)
			written(t, "Bad", r.Bad)
			written(t, "Good", r.Good)
			for _, f := range r.Figures {
				if !kebab.MatchString(f.Name) || f.Basis.String() == "" {
					t.Errorf("figure %q has no proper name or no basis", f.Name)
				}
				oneLine(t, "Why of figure "+f.Name, f.Why)
				oneLine(t, "Source of figure "+f.Name, f.Source)
			}
			if r.Check == nil {
				return
			}
			written(t, "Sound", r.Sound)
			if _, err := os.Stat(r.Name + ".go"); err != nil {
				t.Errorf("the rule does not stand in the file of its name: %v", err)
			}
			if plans := plansIn(t, filepath.Join(ruleFixtures, r.Name)); len(plans) < 2 || !slices.Contains(plans, "sound.plan") {
				t.Error("the fixtures want a plan that raises the rule, and sound.plan")
			}
		})
	}
	for _, dir := range foldersIn(t, ruleFixtures) {
		if rules.Find(dir) == nil {
			t.Errorf("the fixtures in %s belong to no rule", dir)
		}
	}
}

func written(t *testing.T, field, text string) {
	t.Helper()
	if strings.TrimSpace(text) == "" {
		t.Errorf("%s is empty", field)
	}
}

func oneLine(t *testing.T, field, text string) {
	t.Helper()
	written(t, field, text)
	if strings.Contains(text, "\n") || strings.HasSuffix(text, ".") {
		t.Errorf("%s is not one line without a full stop: %q", field, text)
	}
}

func TestFind(t *testing.T) {
	for _, r := range rules.All {
		if rules.Find(r.Name) != r || rules.Nearest(r.Name) != r.Name {
			t.Errorf("%s is not found by its name", r.Name)
		}
	}
	if rules.Find("no-such-rule-at-all") != nil || rules.Nearest("entirely-otherwise") != "" {
		t.Error("a rule was found that there is not")
	}
	if got := rules.Nearest("unkown-name"); got != "unknown-name" {
		t.Errorf("nearest to unkown-name is %q", got)
	}
}

// TestExamples runs what stands in the documentation.
func TestExamples(t *testing.T) {
	for _, r := range rules.All {
		t.Run(r.Name+"/bad", func(t *testing.T) {
			c := example(r.Bad)
			if len(c.found) != 1 || c.found[0].Rule != r.Name {
				t.Errorf("want one finding of the rule, got\n%s", render(c.found))
			}
			c.checkFindings(t)
		})
		t.Run(r.Name+"/good", func(t *testing.T) {
			if c := example(r.Good); len(c.found) > 0 {
				t.Errorf("want none, got\n%s", render(c.found))
			}
		})
	}
}

func TestFixtures(t *testing.T) {
	for _, rule := range foldersIn(t, ruleFixtures) {
		dir := filepath.Join(ruleFixtures, rule)
		golden := goldie.New(t, goldie.WithFixtureDir(dir))
		plans := plansIn(t, dir)
		for _, name := range plans {
			t.Run(rule+"/"+name, func(t *testing.T) {
				c := read(t, dir, name)
				c.checkWants(t)
				c.checkFindings(t)
				shown := strings.TrimSuffix(name, ".plan")
				if len(c.found) > 0 {
					golden.Assert(t, shown, []byte(render(c.found)))
				} else if _, err := os.Stat(golden.GoldenFileName(t, shown)); err == nil {
					t.Errorf("%s is silent, and has a golden", name)
				}
				if strings.HasPrefix(name, "sound") && len(c.found) > 0 {
					t.Errorf("the sound construction must be silent, got\n%s", render(c.found))
				}
			})
		}
		goldens, err := filepath.Glob(filepath.Join(dir, "*.golden"))
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range goldens {
			if name := strings.TrimSuffix(filepath.Base(file), ".golden") + ".plan"; !slices.Contains(plans, name) {
				t.Errorf("%s belongs to no plan", file)
			}
		}
	}
}

// TestProjects runs whole pieces of furniture: sound ones are silent, and every slip in the
// others is found on its line, and nothing else.
func TestProjects(t *testing.T) {
	for _, project := range foldersIn(t, projects) {
		dir := filepath.Join(projects, project)
		for _, name := range plansIn(t, dir) {
			sound, slips := strings.HasPrefix(name, "sound"), strings.HasPrefix(name, "slips")
			if !sound && !slips {
				continue // taken in by one that is
			}
			t.Run(project+"/"+name, func(t *testing.T) {
				c := read(t, dir, name)
				if sound && len(c.found) > 0 {
					t.Errorf("the sound piece must be silent, got\n%s", render(c.found))
				}
				if slips && len(c.found) == 0 {
					t.Error("nothing was found")
				}
				c.checkWants(t)
				c.checkFindings(t)
			})
		}
	}
}

// checked is a plan with all that was found in it.
type checked struct {
	folder *folder
	name   string
	found  []diag.Finding
}

// read checks a plan in a folder.
func read(t *testing.T, dir, name string) checked {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return check(&folder{dir: dir, texts: map[string]string{name: string(text)}}, name)
}

// example checks a text that stands by itself.
func example(text string) checked {
	return check(&folder{texts: map[string]string{"example.plan": text}}, "example.plan")
}

func check(f *folder, name string) checked {
	f.read = nil
	file, err := f.open(nil, name)
	if err != nil {
		panic(err) // the text is there already
	}
	_, found := rules.Run(file, f.open)
	return checked{f, name, found}
}

// folder opens files by their names in it; a text that is given stands before the file.
type folder struct {
	dir   string // none if empty
	texts map[string]string
	read  []*diag.File
}

func (f *folder) open(from *diag.File, name string) (*diag.File, error) {
	if from != nil {
		name = path.Join(path.Dir(from.Name), name)
	}
	if i := slices.IndexFunc(f.read, func(file *diag.File) bool { return file.Name == name }); i >= 0 {
		return f.read[i], nil
	}
	text, ok := f.texts[name]
	if !ok {
		if f.dir == "" || !filepath.IsLocal(name) {
			return nil, errors.New("no such file in the folder")
		}
		bytes, err := os.ReadFile(filepath.Join(f.dir, name))
		if err != nil {
			return nil, err
		}
		text = string(bytes)
	}
	f.read = append(f.read, diag.NewFile(name, text))
	return f.read[len(f.read)-1], nil
}

// wanted is `# want RULE …` at the end of its line, or `# want-above RULE …` for a line
// that can bear no comment.
var wanted = regexp.MustCompile(`#\s*want(-above)?((?:\s+[a-z][a-z-]*)+)\s*$`)

// checkWants holds the findings against the wants in every file that was read.
func (c checked) checkWants(t *testing.T) {
	t.Helper()
	var want, got []string
	for _, file := range c.folder.read {
		for i, line := range strings.Split(file.Text, "\n") {
			m := wanted.FindStringSubmatch(line)
			if m == nil {
				continue
			}
			at := i + 1
			if m[1] != "" {
				at--
			}
			for _, rule := range strings.Fields(m[2]) {
				if rules.Find(rule) == nil {
					t.Errorf("%s:%d: wants %q, which is no rule", file.Name, i+1, rule)
				}
				want = append(want, fmt.Sprintf("%s:%04d %s", file.Name, at, rule))
			}
		}
	}
	for _, f := range c.found {
		line, _ := f.Span.Position()
		name := ""
		if f.Span.Known() {
			name = f.Span.File.Name
		}
		got = append(got, fmt.Sprintf("%s:%04d %s", name, line, f.Rule))
	}
	slices.Sort(want)
	slices.Sort(got)
	if !slices.Equal(want, got) {
		t.Errorf("wants\n  %s\nbut found\n  %s\nas\n%s",
			strings.Join(want, "\n  "), strings.Join(got, "\n  "), render(c.found))
	}
}

// checkFindings holds each finding to what every finding keeps: its rule is in the list,
// its place is in the text, its words are in the house's voice, and each of its fixes makes
// it go away without raising another.
func (c checked) checkFindings(t *testing.T) {
	t.Helper()
	for _, f := range c.found {
		if rules.Find(f.Rule) == nil {
			t.Errorf("%q is not in the list of rules", f.Rule)
		}
		if s := f.Span; s.File == nil || s.Start < 0 || s.End < s.Start || int(s.End) > len(s.File.Text) {
			t.Errorf("%s stands outside the text: %s", f.Rule, f.Message)
		}
		if f.Severity.String() == "none" {
			t.Errorf("%s has no severity: %s", f.Rule, f.Message)
		}
		oneLine(t, "message", f.Message)
		for _, fix := range f.Fixes {
			oneLine(t, "title", fix.Title)
			if len(fix.Edits) > 0 {
				c.checkFix(t, f, fix)
			}
		}
	}
}

func (c checked) checkFix(t *testing.T, f diag.Finding, fix diag.Fix) {
	t.Helper()
	mended := &folder{dir: c.folder.dir, texts: make(map[string]string)}
	for _, file := range c.folder.read {
		var edits []diag.Edit
		for _, e := range fix.Edits {
			if e.Span.File == file {
				edits = append(edits, e)
			}
		}
		text, err := diag.Apply(file, edits)
		if err != nil {
			t.Errorf("fix %q of %s: %v", fix.Title, f.Rule, err)
			return
		}
		mended.texts[file.Name] = text
	}
	before, after := count(c.found), count(check(mended, c.name).found)
	if after[f.Rule] >= before[f.Rule] {
		t.Errorf("fix %q of %s does not mend it", fix.Title, f.Rule)
	}
	for rule, n := range after {
		if n > before[rule] {
			t.Errorf("fix %q of %s raises %s", fix.Title, f.Rule, rule)
		}
	}
}

func count(found []diag.Finding) map[string]int {
	n := make(map[string]int)
	for _, f := range found {
		n[f.Rule]++
	}
	return n
}

// render is the text of findings, for goldens: all that they say, and no layout.
func render(found []diag.Finding) string {
	var b strings.Builder
	for _, f := range found {
		fmt.Fprintf(&b, "%s: %s: %s [%s]\n", place(f.Span), f.Severity, f.Message, f.Rule)
		for _, s := range f.Working {
			fmt.Fprintf(&b, "    %1s %-10s %s\n", s.Op.Sign(), s.Value, s.Label)
		}
		for _, n := range f.Notes {
			fmt.Fprintf(&b, "  %s: %s\n", place(n.Span), n.Message)
		}
		for _, fix := range f.Fixes {
			fmt.Fprintf(&b, "  mend: %s\n", fix.Title)
		}
	}
	return b.String()
}

func place(s diag.Span) string {
	if !s.Known() {
		return "nowhere"
	}
	line, column := s.Position()
	return fmt.Sprintf("%s:%d:%d", s.File.Name, line, column)
}

func foldersIn(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		if e.IsDir() {
			names = append(names, e.Name())
		}
	}
	return names
}

func plansIn(t *testing.T, dir string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.plan"))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, file := range files {
		names = append(names, filepath.Base(file))
	}
	return names
}
