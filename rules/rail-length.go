package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var railLength = &Rule{
	Name: "rail-length", Group: Lengths, Severity: diag.Error,
	Summary: "a stick is cut to a length that its place and its joints do not give",
	Doc: `A rail that is cut to what shows between the stiles has no tenons left, and the wood is spent: a rail cannot
be made longer. One that is too long keeps the shoulders open, or pushes the frame out of its opening.

The length is what stands between the shoulders and what each end's joint adds: a tenon its length, a stub the
groove's depth, a lap or a mitre the width of the mate; dowels, loose tenons and screws add nothing. Where a stile or
a rail is rebated for glass or a panel, tenons are counted from the shoulder on the face side; the shoulder on the rebated
side comes out further by the rebate, at each end.

Compare the finding's working with the drawing from its first line on: the first size that is not yours is the slip.
Leave the length out where the drawing fixes it: the cutting list prints it.

Of a stick that is marked "made" the finding lists what can still be done, cheapest first: take off what is over, make the stiles wider
while they are not cut, mark a new shoulder line for shorter tenons, let in loose ones, or cut it anew.`,
	Sources: `The sum is arithmetic. Unequal shoulders on rebated stuff: W. Noyes, Handwork in Wood, 1910, joint no. 33.`,
	Sound: `A rail with a stub tenon at one end, a tenon at the other and a door's leaf to fit into, cut to the sum; a stile
left free at both ends; slats and a cleat that no joint holds, which stop short.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/4
    down { rail head 2 1/4 cut 15 3/4 ; space middle ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/4
    down { rail head 2 1/4 cut 16 ; space middle ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Check: func(pass *Pass) {
		checkLongs(pass, func(m *plan.Member, kind string) bool {
			return !m.Board() && kind == ""
		}, "between shoulders", noTrim, func(m *plan.Member) wood.Length {
			switch m.Word {
			case "slat", "cleat", "runner", "kicker", "batten", "moulding": // these may lie on something, and stop short
				return m.Worked.Long.Length
			}
			return 0
		})
	},
}
