package draw

// Sizes along an edge of a picture: a line with a stroke at each end of what is measured.

// tick is a place on a line of sizes and, behind it, how far it is to the next one.
type tick struct {
	at   float64 // millimetres of paper
	size string  // to the next; "" where it is unknown, and for the last
}

// across draws a line of sizes below or above what is measured. from is where the strokes begin that
// lead to it.
func (s *sheet) across(ticks []tick, y, from float64) {
	s.dimension(ticks, y, from, false)
}

// down draws a line of sizes beside what is measured.
func (s *sheet) down(ticks []tick, x, from float64) {
	s.dimension(ticks, x, from, true)
}

const stroke = 0.9 // half of the slanting stroke at each end of a size

func (s *sheet) dimension(ticks []tick, line, from float64, upright bool) {
	if len(ticks) < 2 {
		return
	}
	draw := func(class string, a, b, c, d float64) { // along and off the line
		if upright {
			s.path(class, false, b, a, d, c)
		} else {
			s.path(class, false, a, b, c, d)
		}
	}
	draw("thin", ticks[0].at, line, ticks[len(ticks)-1].at, line)
	off := letterHigh*0.5 + 0.6
	if line < from {
		off = -off
	}
	crowded := 0
	for i, t := range ticks {
		draw("thin", t.at, from, t.at, line+sign(line-from)*stroke)
		draw("thin", t.at-stroke, line+stroke, t.at+stroke, line-stroke)
		if t.size == "" || i+1 == len(ticks) {
			continue
		}
		room := ticks[i+1].at - t.at
		away := -off // between what is measured and the line
		if wide(t.size)+0.6 > room {
			if i >= 2 && ticks[i-2].size == t.size {
				continue // in a row, which alternates, the strokes go on without the texts
			}
			// Texts that do not fit stand beyond the line, every other one farther out.
			away = off + float64(crowded%2)*sign(off)*(letterHigh+0.4)
			crowded++
		} else {
			crowded = 0
		}
		if middle := t.at + room/2; upright {
			s.text("size", line+away, middle, true, t.size)
		} else {
			s.text("size", middle, line+away, false, t.size)
		}
	}
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}
