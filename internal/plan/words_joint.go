package plan

// Joints. A line says a kind, or the name of a joint at plan level, and then settings.
// What a kind takes stands in JointKinds: once the kind is read, only its own settings
// count, and what it does not know goes to the word around the joint. So in
// `each panel joint rabbet 1/4 gap 1/8` the gap is the panel's.

import (
	"slices"

	"plancheck/internal/diag"
	"plancheck/lang"
)

// JointKind is what a kind of joint is, adds and takes.
type JointKind struct {
	Name, Doc string
	Adds      string // to the length of the part, at the end that has it
	Unsaid    string // what its own settings are where they are left out; "" where nothing is taken for them
	Settings  string // beyond those of every joint; those that stand right after the kind come first
	Example   string

	opens Place // the words with settings of their own
}

// ofEveryJoint are the settings that do not depend on the kind; ofSeveral those of kinds of which
// several may stand in one end.
const (
	ofEveryJoint = "dry glue"
	ofSeveral    = " set at count"
)

// JointKinds are the kinds of joint, as the reference prints them.
var JointKinds = []JointKind{
	{
		Tenon, "a tongue on the end of a rail, in a mortise", "its length; through and unsaid: the thickness of its mate and 1/16, 1.5mm to level",
		"wide: the rail, less shoulders, grooves and haunch; mortise: as thick as the tenon and 1/16, 1.5mm deeper",
		"thick wide long shoulder haunch apart through barefaced mitred rounded wedged peg mortise" + ofSeveral, "joint tenon thick 5/16 long 1 1/4 haunch 1/2 mortise deep 1 5/16", InTenon,
	},
	{
		LooseTenon, "a separate piece in a mortise of each part", "nothing: the part is as long as between its shoulders",
		"the mortise in the part itself is as deep as that in its mate",
		"thick wide long apart rounded grain mortise" + ofSeveral, "joint loose-tenon thick 3/8 wide 2 long 2 mortise deep 1 1/16", InTenon,
	},
	{Stub, "a short tenon in the groove that holds the panel", "the depth of that groove", "", "", "joint stub", InPlainJoint},
	{
		Housing, "a board's whole end in a groove across its mate", "its depth", "wide: as the board is thick; stopped: it runs from edge to edge",
		"deep wide stopped", "joint housing deep 3/16", InPlainJoint,
	},
	{
		Dado, "a board's whole end in a groove across its mate, which is what a housing is too", "its depth", "wide: as the board is thick; stopped: it runs from edge to edge",
		"deep wide stopped", "joint dado deep 3/8", InPlainJoint,
	},
	{
		SlidingDovetail, "a housing with sloped walls, slid in from the end", "its depth", "stopped: it runs from edge to edge",
		"deep wide stopped", "joint sliding-dovetail deep 3/8 stopped 1", InPlainJoint,
	},
	{
		Rabbet, "a step along an edge: how far into the thickness x how far from the edge",
		"how far it goes into the thickness, where parts stand at right angles; how far from the edge, where they lie in one plane",
		"from the edge: as far as the board in it is thick", "rabbet deep", "joint rabbet 1/4 x 6mm", InPlainJoint,
	},
	{
		Tongue, "a tongue along an end or an edge, in a groove", "its length", "groove: as wide as the tongue is thick, and 1/32, 0.8mm deeper than it is long",
		"thick long grain groove set", "joint tongue thick 1/4 long 3/8 groove deep 13/32", InTongue,
	},
	{
		HalfLap, "each part cut down where they cross", "the width of its mate", "deep, which is cut from the mate: half of the thickness; own, which is cut from the end: the rest",
		"deep own", "joint half-lap deep 3/8", InPlainJoint,
	},
	{
		Bridle, "a slot in one end and a tongue on the other", "the width of its mate", "deep: the width of the mate; thick: a third of the thickness",
		"deep thick set", "joint bridle thick 1/4", InPlainJoint,
	},
	{Scarf, "two ends sloped alike and glued, to make one length", "nothing", "", "slope", "joint scarf slope 1:8", InPlainJoint},
	{
		Mitre, "both ends cut at half the angle", "the width of its mate, so that it reaches to its long point", "no spline, key, dowel or biscuit holds it",
		"angle spline key dowel biscuit" + ofSeveral, "joint mitre spline thick 1/8", InMitre,
	},
	{
		Dovetail, "tails in one board, pins in the other", "the thickness of its mate, less the lap", "the tails go through, and are in the part itself; its slope, pins and pin are not checked",
		"slope lap pins pin starts tails", "joint dovetail slope 1:7 lap 1/4", InPlainJoint,
	},
	{
		BoxJoint, "square fingers in both boards", "the thickness of its mate", "its fingers and their gap are not checked",
		"finger gap", "joint box finger 3/8", InPlainJoint,
	},
	{
		Dowel, "round pegs, glued into both parts", "nothing", "deep and own: half of the dowel and 1/32, 0.8mm",
		"hardware deep own" + ofSeveral, "joint dowel beech8 deep 3/4 own 1 1/16 count 2", InPlainJoint,
	},
	{ScrewJoint, "screws through the mate", "nothing", "", "hardware pilot counterbore" + ofSeveral, "joint screw no8 pilot 7/64 at 1, 3", InPlainJoint},
	{Pocket, "screws at a slant, from a pocket in the part itself", "nothing", "", "hardware pilot counterbore" + ofSeveral, "joint pocket no8 count 2", InPlainJoint},
	{BiscuitJoint, "flat splines that are bought, in slots", "nothing", "each slot is half as deep as the biscuit is wide, and 0.8mm", "hardware" + ofSeveral, "joint biscuit no20 count 2", InPlainJoint},
	{BoltJoint, "a bolt with a nut or an insert", "nothing", "", "hardware counterbore nut-at deep insert" + ofSeveral, "joint bolt bed counterbore 3/8 nut-at 1 3/4", InPlainJoint},
	{Butt, "an end against its mate, with nothing in it", "nothing", "", "", "joint butt", InPlainJoint},
	{ShelfPin, "a shelf that lies loose on pins in holes, and lifts out", "nothing", "", "hardware deep" + ofSeveral, "joint pin brass-pin deep 3/8 count 2", InPlainJoint},
	{Knob, "comes apart by hand: a screw that is turned by hand", "nothing", "", "hardware deep insert" + ofSeveral, "joint knob star insert m6", InPlainJoint},
	{Hook, "comes apart by hand: hooks over", "nothing", "", "hardware" + ofSeveral, "joint hook bed-hook", InPlainJoint},
	{Magnet, "comes apart by hand: held by magnets", "nothing", "", "hardware" + ofSeveral, "joint magnet disc count 2", InPlainJoint},
	{WedgeJoint, "comes apart by hand: a through tenon with a wedge in its tail", "the thickness of its mate, and the tail", "", "tail inside", "joint wedge tail 2 inside 1/16", InPlainJoint},
	{DropIn, "comes apart by hand: lowered into its mate", "its depth", "", "deep", "joint drop-in deep 1/2", InPlainJoint},
}

// ofKind says what a setting is that is another thing in another kind of joint.
var ofKind = map[[2]string]string{
	{Tenon, "wide"}:            "how wide it is, across its rail",
	{LooseTenon, "wide"}:       "how wide it is, across its rail",
	{LooseTenon, "long"}:       "how long the separate piece is",
	{LooseTenon, "thick"}:      "how thick it is",
	{Tenon, "long"}:            "how long it is, from its shoulder",
	{Tenon, "thick"}:           "how thick it is; its cheeks are what is left beside it",
	{Housing, "wide"}:          "how wide its slot is",
	{Dado, "wide"}:             "how wide its slot is",
	{SlidingDovetail, "wide"}:  "how wide its slot is",
	{Housing, "deep"}:          "how deep its slot is",
	{Dado, "deep"}:             "how deep its slot is",
	{SlidingDovetail, "deep"}:  "how deep its slot is",
	{Rabbet, "deep"}:           "how far it goes into the thickness",
	{Tongue, "thick"}:          "how thick it is",
	{Tongue, "long"}:           "how long it is, from its shoulder",
	{HalfLap, "deep"}:          "how deep its mate is cut",
	{HalfLap, "own"}:           "how deep the end itself is cut",
	{Bridle, "deep"}:           "how deep the slot in the end is",
	{Bridle, "thick"}:          "how wide the slot is, and how thick the tongue in it",
	{Dovetail, "slope"}:        "how much its tails and pins slope: one in so many",
	{Dowel, "hardware"}:        "which dowel",
	{Dowel, "deep"}:            "how deep its hole in the mate is",
	{Dowel, "own"}:             "how deep its hole in the end itself is",
	{ScrewJoint, "hardware"}:   "which screw",
	{Pocket, "hardware"}:       "which screw",
	{BiscuitJoint, "hardware"}: "which biscuit",
	{BoltJoint, "hardware"}:    "which bolt",
	{BoltJoint, "deep"}:        "how deep its hole in the end itself is",
	{ShelfPin, "hardware"}:     "which pin",
	{ShelfPin, "deep"}:         "how deep its holes in the mate are",
	{Knob, "hardware"}:         "which knob",
	{Knob, "deep"}:             "how deep its hole in the end itself is",
	{Hook, "hardware"}:         "which hook",
	{Magnet, "hardware"}:       "which magnet",
	{DropIn, "deep"}:           "how deep its place in the mate is",
}

// Takes names the settings of a kind: its own, then those of every joint.
func (k JointKind) Takes() []string { return names(k.Settings + " " + ofEveryJoint) }

// Word is what a joint's line takes once its kind is read.
func (k JointKind) Word() *Word { return kindWords()[k.Name] }

// kindWords are the words that take over from `joint` when its kind is read.
func kindWords() map[string]*Word { return theKindWords.get(makeKindWords) }

var theKindWords lazy[map[string]*Word]

func makeKindWords() map[string]*Word {
	words := make(map[string]*Word, len(JointKinds))
	for _, k := range JointKinds {
		takes := k.Takes()
		w := &Word{Names: names("joint"), Doc: k.Doc, Example: k.Example, Opens: k.opens}
		for _, s := range jointSlots() {
			if !slices.Contains(takes, s.Name) {
				continue
			}
			if s.NameOnly {
				s = s.unnamed()
			}
			if doc := ofKind[[2]string{k.Name, s.Name}]; doc != "" {
				s.Doc, s.Default = doc, ""
			}
			w.Slots = append(w.Slots, s)
		}
		words[k.Name] = w
	}
	return words
}

// jointSlots are the settings of all kinds. Those that stand right after the kind are not
// positional here, since it depends on the kind whether they may.
func jointSlots() []Slot { return theJointSlots.get(makeJointSlots) }

var theJointSlots lazy[[]Slot]

func makeJointSlots() []Slot {
	hardware := func(j *Joint) *Ref[Fastener] { return &j.Hardware }
	slots := []Slot{
		ref("hardware", "the screw, dowel, bolt, pin … that holds it", "joint screw no8", "a fastener", hardware),
		rabbetSlot(),
		length("thick", "how thick the tenon or tongue is", "thick 5/16", func(j *Joint) *Length { return &j.Thick }),
		length("wide", "how wide the tenon is, or the slot of a housing", "wide 2", func(j *Joint) *Length {
			switch j.Kind.Is {
			case Housing, Dado, SlidingDovetail:
				return &j.SlotWide
			}
			return &j.Wide
		}).or("a tenon: its rail, less grooves and haunch"),
		length("long", "how long the tenon or tongue is", "long 1 1/4", func(j *Joint) *Length { return &j.Long }),
		length("shoulder", "how far the tenon stands in from each edge", "shoulder 1/4", func(j *Joint) *Length { return &j.Shoulder }),
		length("apart", "between tenons, where there are several", "apart 2", func(j *Joint) *Length { return &j.Apart }),
		flag("through", "it goes through its mate", "through", func(j *Joint) *Flag { return &j.Through }),
		flag("barefaced", "with one shoulder", "barefaced", func(j *Joint) *Flag { return &j.Barefaced }),
		flag("mitred", "its tip is mitred, so that two meet in a post", "mitred", func(j *Joint) *Flag { return &j.Mitred }),
		flag("rounded", "its edges are rounded to fit a routed mortise", "rounded", func(j *Joint) *Flag { return &j.Rounded }),
		choice("grain", "which way the grain of the loose piece runs: along is through the joint", "grain along", "along across",
			func(j *Joint) *Choice { return &j.Grain }).or("along"),
		length("deep", "how deep it is let into its mate", "deep 3/16", func(j *Joint) *Length {
			if j.Kind.Is == Rabbet {
				return &j.Rabbet.Across
			}
			return &j.Deep
		}),
		length("own", "how deep it is cut into the end itself", "own 3/8", func(j *Joint) *Length { return &j.Own }),
		length("stopped", "how far behind the front it begins", "stopped 1/2", func(j *Joint) *Length { return &j.Stopped }),
		figure("slope", "one in so many", "slope 1:7", func(j *Joint) *Figure { return &j.Slope }, lang.Slope),
		figure("angle", "at which the two parts' ends meet the saw", "angle 45deg", func(j *Joint) *Figure { return &j.Angle }, lang.Angle).or("180deg over the sides of the frame"),
		count("key", "how many keys are let in across it", "key 2", func(j *Joint) *Count { return &j.Key }),
		ref("dowel", "the dowel that holds it", "dowel beech8", "a fastener", hardware),
		ref("biscuit", "the biscuit that holds it", "biscuit no20", "a fastener", hardware),
		length("lap", "what is left in front of the tails of a half-blind one", "lap 1/4", func(j *Joint) *Length { return &j.Lap }).or("0"),
		count("pins", "how many pins there are, half ones at the ends counted", "pins 4", func(j *Joint) *Count { return &j.Pins }),
		length("pin", "how wide a pin is on its narrow side", "pin 1/4", func(j *Joint) *Length { return &j.Pin }),
		choice("starts", "what stands at the edge", "starts pin", "pin tail", func(j *Joint) *Choice { return &j.Starts }).or("pin"),
		thing("tails", "which part has the tails", "tails left", func(j *Joint) *Ref[Thing] { return &j.Tails }),
		length("finger", "how wide a finger is", "finger 3/8", func(j *Joint) *Length { return &j.Finger }),
		length("gap", "how much narrower a finger is than its slot", "gap 0.004", func(j *Joint) *Length { return &j.Gap }),
		length("pilot", "the diameter of the pilot hole", "pilot 7/64", func(j *Joint) *Length { return &j.Pilot }),
		length("counterbore", "how deep the head is sunk", "counterbore 3/8", func(j *Joint) *Length { return &j.Counterbore }).or("0"),
		length("nut-at", "from the end of the part to the middle of the nut", "nut-at 1 3/4", func(j *Joint) *Length { return &j.NutAt }),
		ref("insert", "the insert that the bolt goes into", "insert m6", "a fastener", func(j *Joint) *Ref[Fastener] { return &j.Insert }),
		length("tail", "how far the tenon stands out behind its mate", "tail 2", func(j *Joint) *Length { return &j.Tail }),
		length("inside", "how far inside the mate the hole for the wedge begins", "inside 1/16", func(j *Joint) *Length { return &j.Inside }),
		flag("dry", "it is not glued", "dry", func(j *Joint) *Flag { return &j.Dry }),
		choice("glue", "how much of it is glued", "glue centre", "full centre", func(j *Joint) *Choice { return &j.GlueAt }).or("full"),
		length("set", "from the part's own face, the front, left or lower one, to a tenon, a tongue or a slot; of dowels, screws and bolts to their middle", "set 1/4", func(j *Joint) *Length { return &j.Set }).or("centred"),
		lengths("at", "where they stand, from the lower or left edge", "at 1, 3", func(j *Joint) *[]Length { return &j.At }),
		count("count", "how many there are", "count 2", func(j *Joint) *Count { return &j.Count }),
	}
	slots[0].NameOnly, slots[1].NameOnly = true, true
	return slots
}

// rabbetSlot is INTO x FROM-EDGE; one number alone is INTO.
func rabbetSlot() Slot {
	s := pair("rabbet", "into the thickness x from the edge; one number alone is into the thickness", "joint rabbet 1/4 x 6mm", func(j *Joint) *Pair { return &j.Rabbet })
	set := s.set
	s.set = func(d *decoder, node any, at, v *lang.Expr) {
		if v.Op != lang.Sized {
			d.length(v, &node.(*Joint).Rabbet.Across)
			return
		}
		set(d, node, at, v)
	}
	s.given = func(node any) diag.Span {
		if into := node.(*Joint).Rabbet.Across; into.Said() {
			return into.Span
		}
		return diag.Span{}
	}
	s.inherit = func(d *decoder, node, from any) {
		to, r := &node.(*Joint).Rabbet, &from.(*Joint).Rabbet
		d.inheritLength(&to.Across, &r.Across)
		d.inheritLength(&to.Deep, &r.Deep)
	}
	return s
}

// jointWanted is what a joint's line begins with.
const jointWanted = "a kind of joint, such as `tenon`, or the name of a joint at plan level"

func jointKindNames() []string {
	kinds := make([]string, len(JointKinds))
	for i := range JointKinds {
		kinds[i] = JointKinds[i].Name
	}
	return kinds
}

// kindSlot is what a joint's line begins with: a kind, or the name of a joint at plan
// level. Then the rest of the line is the joint's, by what its kind takes.
func kindSlot(example string, joint func(node any) *Joint) Slot {
	return Slot{
		Name: "kind", Doc: "a kind of joint, or the name of a joint at plan level",
		Example: example, Kind: AName, Positional: true, NameOnly: true, Must: true, Choices: jointKindNames(),
		Wants: jointWanted,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			j := joint(node)
			top := &d.line.levels[len(d.line.levels)-1]
			top.node = j
			if k := kindWords()[v.Text]; k != nil {
				j.Kind = Choice{v.Text, v.Span}
				top.word, top.place = k, k.Opens
				d.positionals(k, j, v.Span, false)
				return
			}
			to := &j.From
			to.Name, to.Span = v.Text, v.Span
			d.bind(v, jointWanted, func(found any) bool { return bindRef(to, found) })
		},
		given: func(node any) diag.Span { return joint(node).kindAt() },
	}
}

// kindAt is where a joint says its kind, or which joint it is like.
func (j *Joint) kindAt() diag.Span {
	if j.From.Said() {
		return j.From.Span
	}
	return j.Kind.Span
}

func jointWords() []Word {
	words := []Word{
		namedJointWord(),
		jointWord(InAssembly, "of every end in it that butts, unless its part says otherwise", func(owner any) **Joint { return &owner.(*Assembly).Joint }),
		jointWord(InMember, "of both its ends", func(owner any) **Joint { return &memberOf(owner).Joint }),
		jointWord(InPanel, "of its edges: a back's or a panel's rabbet", func(owner any) **Joint { return &owner.(*Panel).Joint }),
		jointWord(InGlass, "of its edges: the rabbet that it lies in", func(owner any) **Joint { return &owner.(*Glass).Joint }),
		jointWord(InEnd, "of this end", func(owner any) **Joint { return &owner.(*EndJoint).Joint }),
		cornerWord(),
	}
	return append(words, jointChildren()...)
}

// namedJointWord is a joint at plan level, which others take by its name.
func namedJointWord() Word {
	w := many(func(p *Plan) *[]*Joint { return &p.JointNamed }, Word{
		Names: names("joint"), In: AtTop | InPattern, Opens: InJoint,
		Doc:     "a joint that is said once and used by its name",
		Example: "joint corner tenon thick 5/16 long 1 1/4",
		Slots: append([]Slot{
			name(func(j *Joint) *Name { return &j.Name }).must(),
			kindSlot("joint corner tenon", itself),
		}, jointSlots()...),
	})
	return grown(w, func(j *Joint, s *lang.Statement) { j.Span = s.Head() })
}

func itself(node any) *Joint { return node.(*Joint) }

// jointWord is the joint of an owner, said once. What a part says itself adds to a rule
// of the same kind, and replaces one of another kind whole.
func jointWord(in Place, of string, field func(owner any) **Joint) Word {
	return Word{
		Names: names("joint"), In: in, Opens: InJoint,
		Doc:     "the joint " + of,
		Example: "joint tenon thick 5/16 long 1 1/4",
		Slots:   append([]Slot{kindSlot("joint tenon", itself)}, jointSlots()...),
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			to := field(owner)
			if *to != nil && !d.once(s, (*to).Span) {
				return nil
			}
			*to = &Joint{Span: s.Head()}
			return *to
		},
		inherit: func(d *decoder, owner, from any) {
			to, rule := field(owner), *field(from)
			switch own := *to; {
			case rule == nil:
			case own == nil:
				*to = rule
			default:
				*to = d.mergeJoints(own, rule)
			}
		},
	}
}

// cornerWord is the joint between a drawer's sides and its front or back: a joint's line
// with the place in front.
func cornerWord() Word {
	w := many(func(dr *Drawer) *[]*Corner { return &dr.Corners }, Word{
		Names: names("corner"), In: InDrawer, Opens: InCorner,
		Doc:     "how the sides of a drawer are joined to its front or its back; it goes on as a joint does",
		Example: "corner front dovetail slope 1:7 lap 1/4",
		Slots: []Slot{
			choice("at", "at the front or at the back", "corner front dovetail", "front back", func(c *Corner) *Choice { return &c.At }).unnamed().must(),
			kindSlot("corner front dovetail", func(node any) *Joint { return node.(*Corner).Joint }),
		},
	})
	w.inherit = func(d *decoder, owner, from any) {
		to := &owner.(*Drawer).Corners
		for _, c := range from.(*Drawer).Corners {
			i := slices.IndexFunc(*to, func(own *Corner) bool { return own.At.Is == c.At.Is })
			if i < 0 {
				*to = append(*to, c)
				continue
			}
			(*to)[i].Joint = d.mergeJoints((*to)[i].Joint, c.Joint)
		}
	}
	return grown(w, func(c *Corner, s *lang.Statement) {
		c.Span = s.Head()
		c.Joint = &Joint{Span: c.Span}
	})
}

// jointChildren are the words with settings of their own that some kinds take.
func jointChildren() []Word {
	return []Word{
		grown(one(func(j *Joint) **Haunch { return &j.Haunch }, Word{
			Names: names("haunch"), In: InTenon, Opens: InHaunch,
			Doc:     "a short part of a tenon beside its full length; its width comes off the tenon's",
			Example: "haunch 1/2 deep 3/8",
			Slots: []Slot{
				length("wide", "how wide it is", "haunch 1/2", func(h *Haunch) *Length { return &h.Wide }).unnamed().must(),
				length("deep", "how far it goes in", "deep 3/8", func(h *Haunch) *Length { return &h.Deep }).or("the panel groove's"),
			},
		}), func(h *Haunch, s *lang.Statement) { h.Span = s.Head() }),
		grown(one(func(j *Joint) **Mortise { return &j.Mortise }, Word{
			Names: names("mortise"), In: InTenon, Opens: InMortise,
			Doc:     "the hole for a tenon; what follows on the line is the mortise's",
			Example: "mortise deep 1 5/16",
			Slots: []Slot{
				length("deep", "how deep it is in the mate", "deep 1 5/16", func(m *Mortise) *Length { return &m.Deep }).or("the tenon's length and 1/16, 1.5mm"),
				length("own", "of a loose tenon: how deep it is in the end itself", "own 1 1/16", func(m *Mortise) *Length { return &m.Own }).or("as deep as in the mate"),
				length("thick", "how wide the slot is, across the tenon's thickness", "thick 5/16", func(m *Mortise) *Length { return &m.Thick }),
				length("wide", "how long the slot is, along the tenon's width", "wide 1 1/2", func(m *Mortise) *Length { return &m.Wide }).or("the tenon's width"),
				flag("round-ended", "as a router leaves it", "round-ended", func(m *Mortise) *Flag { return &m.RoundEnded }),
			},
		}), func(m *Mortise, s *lang.Statement) { m.Span = s.Head() }),
		grown(one(func(j *Joint) **Wedged { return &j.Wedged }, Word{
			Names: names("wedged"), In: InTenon, Opens: InWedged,
			Doc:     "wedges that spread a tenon",
			Example: "wedged count 2 from-edge 1/8 stop 1/4",
			Slots: []Slot{
				count("count", "how many wedges", "count 2", func(w *Wedged) *Count { return &w.Count }),
				length("from-edge", "from the edge of the tenon to the saw cut", "from-edge 1/8", func(w *Wedged) *Length { return &w.FromEdge }),
				length("stop", "from the shoulder to the end of the saw cut", "stop 1/4", func(w *Wedged) *Length { return &w.Stop }),
				length("wedge-long", "how long the wedges themselves are", "wedge-long 3/4", func(w *Wedged) *Length { return &w.Long }),
				choice("spread", "along or across the mate's grain", "spread along", "along across", func(w *Wedged) *Choice { return &w.Spread }).or("along"),
				flag("fox", "driven by the bottom of a blind mortise", "fox", func(w *Wedged) *Flag { return &w.Fox }),
			},
		}), func(w *Wedged, s *lang.Statement) { w.Span = s.Head() }),
		grown(one(func(j *Joint) **Peg { return &j.Peg }, pegWord(InTenon, "a peg through the mate and the tenon", "peg oak-peg at 1/2 draw 1/16",
			"from the shoulder to its hole in the mate",
			length("draw", "how much nearer the shoulder its hole in the tenon is", "draw 1/16", func(p *Peg) *Length { return &p.Draw }),
			length("in-tenon", "in place of draw: from the shoulder to its hole in the tenon", "in-tenon 7/16", func(p *Peg) *Length { return &p.InTenon }),
		)), func(p *Peg, s *lang.Statement) { p.Span = s.Head() }),
		grown(one(func(b *Breadboard) **Peg { return &b.Peg }, pegWord(InBreadboard, "pegs through a breadboard and the tongue", "peg oak-peg at 2, 34 slotted 1/2",
			"where they stand, across the top",
			length("slotted", "how long their holes in the tongue are", "slotted 1/2", func(p *Peg) *Length { return &p.Slotted }),
		)), func(p *Peg, s *lang.Statement) { p.Span = s.Head() }),
		grown(one(func(j *Joint) **Spline { return &j.Spline }, Word{
			Names: names("spline"), In: InMitre, Opens: InSpline,
			Doc:     "a strip that is let into both halves",
			Example: "spline thick 1/8",
			Slots: []Slot{
				length("thick", "how thick it is", "thick 1/8", func(s *Spline) *Length { return &s.Thick }),
				choice("grain", "along is through the joint", "grain along", "along across", func(s *Spline) *Choice { return &s.Grain }).or("along"),
			},
		}), func(sp *Spline, s *lang.Statement) { sp.Span = s.Head() }),
		tongueGrooveWord(),
	}
}

// tongueGrooveWord is the groove of a tongue, whose settings are the joint's own.
func tongueGrooveWord() Word {
	w := within(Word{
		Names: names("groove"), In: InTongue, Opens: InSpline,
		Doc:     "what the tongue goes into",
		Example: "groove deep 13/32",
		Slots: []Slot{
			length("wide", "how wide it is", "wide 1/4", func(j *Joint) *Length { return &j.Groove.Across }).or("as the tongue is thick"),
			length("deep", "how deep it is", "deep 13/32", func(j *Joint) *Length { return &j.Groove.Deep }).or("the tongue's length and 1/32, 0.8mm"),
		},
	})
	w.inherit = func(d *decoder, node, from any) {
		for i := range w.Slots {
			w.Slots[i].inherit(d, node, from)
		}
	}
	return w
}

func pegWord(in Place, doc, example, at string, settings ...Slot) Word {
	return Word{
		Names: names("peg"), In: in, Opens: InPeg,
		Doc: doc, Example: example,
		Slots: append([]Slot{
			ref("of", "which peg", "peg oak-peg", "a fastener", func(p *Peg) *Ref[Fastener] { return &p.Of }).unnamed(),
			lengths("at", at, "at 1/2", func(p *Peg) *[]Length { return &p.At }),
		}, settings...),
	}
}
