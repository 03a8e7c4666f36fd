package motion

import "math"

// project gives the vector nearest to g that points into none of the rows: v·row ≤ 0 for every row.
// It is what is left of g when the nearest non-negative sum of rows is taken away (the two cones are
// polar to each other), found by the active-set method for non-negative least squares: Solving
// Least Squares Problems (1974), chapter 23.
func project(rows [][]float64, g []float64) []float64 {
	v := append([]float64(nil), g...)
	y := make([]float64, len(rows))
	in := make([]bool, len(rows))
	scale := math.Sqrt(dot(g, g))
	for range 20 * (len(g) + 1) {
		best, most := -1, scale*1e-12
		for i, r := range rows {
			if !in[i] && dot(r, v) > most {
				best, most = i, dot(r, v)
			}
		}
		if best < 0 {
			break
		}
		in[best] = true
		for !settle(rows, g, y, in) {
		}
		copy(v, g)
		for i, r := range rows {
			for k := range v {
				v[k] -= y[i] * r[k]
			}
		}
	}
	return v
}

// settle solves for the weights of the chosen rows; where one would turn negative, it goes as far as
// none does, lets that row go and asks to be called again.
func settle(rows [][]float64, g, y []float64, in []bool) bool {
	var chosen []int
	for i, yes := range in {
		if yes {
			chosen = append(chosen, i)
		}
	}
	z := weights(rows, g, chosen)
	step, leave := 1.0, -1
	for k, i := range chosen {
		if z[k] > 0 {
			continue
		}
		if a := y[i] / (y[i] - z[k]); leave < 0 || a < step {
			step, leave = a, i
		}
	}
	for k, i := range chosen {
		y[i] += min(step, 1) * (z[k] - y[i])
	}
	if leave < 0 {
		return true
	}
	y[leave], in[leave] = 0, false
	return false
}

// weights solves the normal equations of the chosen rows by elimination with pivots; a row that
// depends on the others gets no weight.
func weights(rows [][]float64, g []float64, chosen []int) []float64 {
	n := len(chosen)
	m := make([][]float64, n)
	for a := range m {
		m[a] = make([]float64, n+1)
		for b := range n {
			m[a][b] = dot(rows[chosen[a]], rows[chosen[b]])
		}
		m[a][n] = dot(rows[chosen[a]], g)
	}
	for c := range n {
		p := c
		for r := c + 1; r < n; r++ {
			if math.Abs(m[r][c]) > math.Abs(m[p][c]) {
				p = r
			}
		}
		m[c], m[p] = m[p], m[c]
		if math.Abs(m[c][c]) < 1e-12 {
			continue
		}
		for r := range n {
			if r == c {
				continue
			}
			f := m[r][c] / m[c][c]
			for k := c; k <= n; k++ {
				m[r][k] -= f * m[c][k]
			}
		}
	}
	z := make([]float64, n)
	for c := range n {
		if math.Abs(m[c][c]) >= 1e-12 {
			z[c] = m[c][n] / m[c][c]
		}
	}
	return z
}

func dot(a, b []float64) float64 {
	s := 0.
	for i := range a {
		s += a[i] * b[i]
	}
	return s
}
