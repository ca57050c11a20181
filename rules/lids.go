package rules

// What the rules about stays share: how far the two points of a stay are from one another as a lid or a flap
// opens, and what turns it.

import (
	"iter"
	"math"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// stayed is a lid or a flap that a stay holds open.
type stayed struct {
	*plan.Door
	use  *plan.HardwareUse
	path string
	deep plan.Length // from the edge that it turns on to its free one
}

// stayedLids ranges over the stays of lids, and of doors that are hung at their top or bottom.
func stayedLids(p *plan.Plan) iter.Seq[stayed] {
	return func(yield func(stayed) bool) {
		for d := range p.Leaves() {
			s := stayed{Door: d, path: plan.PathOf(d)}
			hung, turns := d.Hung()
			switch {
			case turns && (s.level() || hung.Axis() == plan.Down):
				s.deep = d.Size[hung.Axis()]
			case !s.level():
				continue
			}
			for _, s.use = range d.Stays {
				if s.use.Stay != nil && !yield(s) {
					return
				}
			}
		}
	}
}

// level reports whether it lies level when it is shut: a lid.
func (s stayed) level() bool { return s.Board != nil }

// placed reports whether the points of the stay are known, and how far the lid is to open.
func (s stayed) placed() bool {
	at, opens := s.use.Stay.Case, s.OpensTo()
	return s.use.Stay.Lid.Known() && at.Across.Known() && at.Deep.Known() && opens.Known() && opens.Value > 0 && opens.Value < 360 &&
		s.use.Stay.Lid.Length > 0 && (at.Across.Length != 0 || at.Deep.Length != 0)
}

// angle is how far the point on the case stands from the shut lid, as it is seen from the pin, in degrees.
func (s stayed) angle() float64 {
	at := s.use.Stay.Case
	return math.Atan2(float64(at.Deep.Length), float64(at.Across.Length)) * 180 / math.Pi
}

// arms are how far the points on the lid and on the case are from the pin.
func (s stayed) arms() (lid, box float64) {
	at := s.use.Stay.Case
	return float64(s.use.Stay.Lid.Length), math.Hypot(float64(at.Across.Length), float64(at.Deep.Length))
}

// apart is how far its two points are from one another when the lid is open by so many degrees.
func (s stayed) apart(degrees float64) wood.Length {
	lid, box := s.arms()
	cos := math.Cos((degrees + s.angle()) * math.Pi / 180)
	return wood.Length(math.Round(math.Sqrt(max(0, lid*lid+box*box-2*lid*box*cos))))
}

// farthest and nearest are between shut and open where its points are that, in degrees. They are farthest where the
// lid has turned until the pin is between them, nearest where it lies along the line to the case.
func (s stayed) farthest() float64 {
	return s.between(180, s.apart(0) > s.apart(s.OpensTo().Value))
}

func (s stayed) nearest() float64 {
	return s.between(0, s.apart(0) < s.apart(s.OpensTo().Value))
}

// between is where the lid stands so many degrees from the point on the case, if it does while it opens; else at
// the end that is said.
func (s stayed) between(degrees float64, shut bool) float64 {
	opens := s.OpensTo().Value
	if at := degrees - s.angle(); at > 0 && at < opens {
		return at
	}
	if shut {
		return 0
	}
	return opens
}

// stops is how far the lid is open, in degrees, when its points come to be so far apart.
func (s stayed) stops(apart wood.Length) float64 {
	lid, box := s.arms()
	cos := (lid*lid + box*box - float64(apart)*float64(apart)) / (2 * lid * box)
	return math.Acos(max(-1, min(1, cos)))*180/math.Pi - s.angle()
}

// working says where the points are, and how far apart at some angle.
func (s stayed) working(p *plan.Plan, degrees float64, label string) *plan.Paper {
	at := s.use.Stay.Case
	return p.Paper().
		Start(s.use.Stay.Lid.Length, "from the pin to its point on the "+s.leaf()).
		Start(at.Across.Length, "from the pin to its point on the case, along the shut "+s.leaf()).
		Start(at.Deep.Length, "the same, into the case").
		Start(s.apart(degrees), label)
}

// leaf is what moves.
func (s stayed) leaf() string {
	if s.level() {
		return "lid"
	}
	return "leaf"
}
