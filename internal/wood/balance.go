package wood

// What is wrong with a layup that does not stay flat, and the least that would put it right.

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// Panel is what a layup has to keep flat: its size, how far out of flat its use lets it come,
// and the moisture contents in percent that it will see.
type Panel struct {
	Length, Width Length
	Allowed       Length
	Moistures     []float64
}

// Balance is how a layup does as a panel.
type Balance struct {
	Warp     Warp    // the worst that it comes to
	Moisture float64 // percent, at which it does
	// Worst is the ply to blame: the one that does the most good when it is made like its
	// mirror, or that has none. It is -1 where the panel stays flat.
	Worst int
	// Steps are what would bring the warp within what is allowed: one where one does, else one
	// for each pair that does not mirror. None where nothing needs doing.
	Steps []Step
	Left  Warp // the worst that is left after the steps
}

// Step is one change to a layup, whose plies are counted from 0 at the face.
type Step struct {
	Ply  int  // the ply to change; where one is added, its number once it is in
	Like int  // the ply that it becomes like, its mirror; in the layup without the step
	Add  bool // there is no such ply yet
	// What it takes over. All four where a ply is added.
	Moisture, Angle, Thick, Material bool
}

// Balance says how the layup does, and whether the shelf has the figures.
//
// Mirrored plies leave B = 0 and M = 0, so that nothing bends. Each step that makes a ply more
// like its mirror is tried, the smallest first: pressed at another moisture; one ply more, where
// their number is even and the middle two are not alike, since then one is missing; turned;
// another thickness; another wood; several of these. Of two alike, a thin ply is added before a
// thick one, what comes nearer to the middle of the seasons is what both are pressed at (FPL
// Report 1252, Brouse, 1940), and the ply nearer to the back is changed, since faces are chosen for
// their looks. That order is common practice, no source.
func (l Layup) Balance(panel Panel) (Balance, bool) {
	warp, moisture, ok := l.worst(panel)
	if !ok {
		return Balance{}, false
	}
	b := Balance{Warp: warp, Moisture: moisture, Worst: -1, Left: warp}
	if !Over(warp.Worst(), 0) {
		return b, true
	}
	tries := l.tries(panel)
	if best, ok := l.leastLeft(tries, warp); ok && Under(best.left.Worst(), warp.Worst()) {
		b.Worst = best.step.Ply
		if best.step.Add {
			b.Worst = best.step.Like
		}
	}
	if !Over(warp.Worst(), panel.Allowed) {
		return b, true
	}
	for _, t := range tries {
		if !Over(t.left.Worst(), panel.Allowed) {
			b.Steps, b.Left = []Step{t.step}, t.left
			return b, true
		}
	}
	mirrored := slices.Clone(l)
	for i := range len(l) / 2 {
		back, face := l.likeness(len(l)-1-i, i), l.likeness(i, len(l)-1-i)
		if back.taken() > 0 {
			step := slices.MinFunc([]Step{back, face}, func(a, b Step) int { return l.compare(a, b, panel) })
			b.Steps = append(b.Steps, step)
			mirrored[step.Ply] = step.on(l)
		}
	}
	b.Left, _, ok = mirrored.worst(panel)
	return b, ok
}

// worst is the greatest warp over the panel's moisture contents, and the one at which it comes.
func (l Layup) worst(panel Panel) (warp Warp, moisture float64, ok bool) {
	for i, m := range panel.Moistures {
		laminate, ok := l.At(m)
		if !ok {
			return Warp{}, 0, false
		}
		strain, ok := laminate.Free()
		if !ok {
			return Warp{}, 0, false
		}
		if w := strain.Warp(panel.Length, panel.Width); i == 0 || w.Worst() > warp.Worst() {
			warp, moisture = w, m
		}
	}
	return warp, moisture, len(panel.Moistures) > 0
}

// try is one step and the warp that is left after it.
type try struct {
	step Step
	left Warp
}

// compare puts the smaller step first, as Balance says.
func (l Layup) compare(a, b Step, panel Panel) int {
	ofAlike := 0
	switch {
	case a.Add && b.Add:
		ofAlike = cmp.Compare(l[a.Like].Thick, l[b.Like].Thick)
	case a.size() == 0 && b.size() == 0:
		ofAlike = cmp.Compare(panel.offMiddle(l[a.Like].Moisture), panel.offMiddle(l[b.Like].Moisture))
	}
	return cmp.Or(cmp.Compare(a.size(), b.size()), ofAlike, cmp.Compare(b.Ply, a.Ply))
}

// offMiddle is how far a moisture content is from the middle of those that the panel will see.
func (p Panel) offMiddle(moisture float64) float64 {
	return math.Abs(moisture - (slices.Min(p.Moistures)+slices.Max(p.Moistures))/2)
}

// mostPlies bounds the search, whose cost grows with the square of the plies. A layup of more is
// told to mirror, without a search for less.
const mostPlies = 25

// tries are all single steps, the smallest first.
func (l Layup) tries(panel Panel) []try {
	if len(l) > mostPlies {
		return nil
	}
	var steps []Step
	for i := range len(l) / 2 {
		j := len(l) - 1 - i
		steps = append(steps, l.likeness(j, i).parts()...)
		steps = append(steps, l.likeness(i, j).parts()...)
	}
	if middle := len(l) / 2; len(l)%2 == 0 && l.likeness(middle, middle-1).taken() > 0 {
		for i := range l {
			steps = append(steps, Step{
				Ply: l.opposite(i), Like: i, Add: true,
				Moisture: true, Angle: true, Thick: true, Material: true,
			})
		}
	}
	slices.SortStableFunc(steps, func(a, b Step) int { return l.compare(a, b, panel) })
	var all []try
	for _, step := range steps {
		if left, _, ok := l.after(step).worst(panel); ok {
			all = append(all, try{step, left})
		}
	}
	return all
}

// leastLeft is the step to a whole mirror ply that leaves the least of a warp, to a tenth of it;
// the smallest of several that do.
func (l Layup) leastLeft(tries []try, warp Warp) (try, bool) {
	var whole []try
	for _, t := range tries {
		if t.step.Add || t.step == l.likeness(t.step.Ply, t.step.Like) {
			whole = append(whole, t)
		}
	}
	if len(whole) == 0 {
		return try{}, false
	}
	return slices.MinFunc(whole, func(a, b try) int {
		return cmp.Compare(a.left.tenths(warp), b.left.tenths(warp))
	}), true
}

func (w Warp) tenths(of Warp) float64 {
	return math.Floor(10 * float64(w.Worst()) / float64(of.Worst()))
}

// likeness is the step that makes ply i like ply j.
func (l Layup) likeness(i, j int) Step {
	a, b := l[i], l[j]
	turned := math.Mod(a.Angle-b.Angle, 180) // the grain has no sense
	return Step{
		Ply: i, Like: j,
		Moisture: a.Moisture != b.Moisture,
		Angle:    turned != 0,
		Thick:    !Same(a.Thick, b.Thick),
		Material: a.Material != b.Material,
	}
}

// opposite is where a ply goes that is to mirror ply i in a layup with an even number of them.
func (l Layup) opposite(i int) int {
	if i < len(l)/2 {
		return len(l) - i
	}
	return len(l) - 1 - i
}

// InWords says the step to a maker: "make ply 3 like ply 1, its mirror: thickness".
func (s Step) InWords() string {
	if s.Add {
		return fmt.Sprintf("lay one more ply like ply %d, as ply %d", s.Like+1, s.Ply+1)
	}
	var of []string
	for _, taken := range []struct {
		is   bool
		what string
	}{{s.Moisture, "moisture"}, {s.Angle, "direction of the grain"}, {s.Thick, "thickness"}, {s.Material, "wood"}} {
		if taken.is {
			of = append(of, taken.what)
		}
	}
	return fmt.Sprintf("make ply %d like ply %d, its mirror: %s", s.Ply+1, s.Like+1, strings.Join(of, ", "))
}

// taken is how many properties the step takes over.
func (s Step) taken() int {
	n := 0
	for _, is := range []bool{s.Moisture, s.Angle, s.Thick, s.Material} {
		if is {
			n++
		}
	}
	return n
}

// parts are the steps that take over one property each, and the whole where it takes several.
func (s Step) parts() []Step {
	var all []Step
	add := func(is bool, part Step) {
		if is {
			part.Ply, part.Like = s.Ply, s.Like
			all = append(all, part)
		}
	}
	add(s.Moisture, Step{Moisture: true})
	add(s.Angle, Step{Angle: true})
	add(s.Thick, Step{Thick: true})
	add(s.Material, Step{Material: true})
	add(s.taken() > 1, s)
	return all
}

// size puts the steps in the order that Balance says.
func (s Step) size() int {
	switch {
	case s.Add:
		return 1
	case s.taken() > 1:
		return 5
	case s.Moisture:
		return 0
	case s.Angle:
		return 2
	case s.Thick:
		return 3
	}
	return 4
}

// after is the layup with the step taken.
func (l Layup) after(s Step) Layup {
	changed := slices.Clone(l)
	if s.Add {
		return slices.Insert(changed, s.Ply, l[s.Like])
	}
	changed[s.Ply] = s.on(l)
	return changed
}

// on is the ply that the step makes of the layup's.
func (s Step) on(l Layup) Ply {
	ply, like := l[s.Ply], l[s.Like]
	if s.Moisture {
		ply.Moisture = like.Moisture
	}
	if s.Angle {
		ply.Angle = like.Angle
	}
	if s.Thick {
		ply.Thick = like.Thick
	}
	if s.Material {
		ply.Material = like.Material
	}
	return ply
}
