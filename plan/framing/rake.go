package framing

// ceiling returns a height above everything in w.
func (w *framedWall) ceiling() float64 { return w.head + 1200 }
