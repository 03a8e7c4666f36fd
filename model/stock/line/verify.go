package line

import "fmt"

// Verify checks a plan against its task with plain sums of the task's own lengths; it shares nothing with the search.
// A part may end within a ten-thousandth of a millimetre of the bar's end.
func Verify(t Task, p Plan) error {
	cut := make([]int, len(t.Parts))
	taken := make([]int, len(t.Stocks))
	cost, priced := 0.0, false
	for _, s := range t.Stocks {
		priced = priced || s.Price > 0
	}
	for i, b := range p.Bars {
		if b.Stock < 0 || b.Stock >= len(t.Stocks) || b.Count < 1 || len(b.Parts) == 0 {
			return fmt.Errorf("bar %d: stock %d, %d of it, %d parts", i+1, b.Stock, b.Count, len(b.Parts))
		}
		s := t.Stocks[b.Stock]
		used := 2*t.Trim + float64(len(b.Parts)-1)*t.Kerf
		for _, k := range b.Parts {
			if k < 0 || k >= len(t.Parts) {
				return fmt.Errorf("bar %d: no part %d", i+1, k)
			}
			used += t.Parts[k].Length
			cut[k] += b.Count
		}
		if used > s.Length+1e-4 {
			return fmt.Errorf("bar %d: %.4f mm wanted from %.4f mm of %s", i+1, used, s.Length, s.Name)
		}
		taken[b.Stock] += b.Count
		if priced {
			cost += float64(b.Count) * s.Price
		} else {
			cost += float64(b.Count) * s.Length
		}
	}
	for k, n := range cut {
		if n != t.Parts[k].Count {
			return fmt.Errorf("%s: %d cut, %d wanted", t.Parts[k].Name, n, t.Parts[k].Count)
		}
	}
	for k, n := range taken {
		if l := t.Stocks[k].Limit; l > 0 && n > l {
			return fmt.Errorf("%s: %d taken, %d on hand", t.Stocks[k].Name, n, l)
		}
	}
	if d := cost - p.Cost; d > 1e-3+1e-9*cost || d < -1e-3-1e-9*cost {
		return fmt.Errorf("cost stated as %.4f, is %.4f", p.Cost, cost)
	}
	if p.Bound > p.Cost+1e-6*cost {
		return fmt.Errorf("bound %.4f above the cost %.4f", p.Bound, p.Cost)
	}
	return nil
}
