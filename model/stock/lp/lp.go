// Package lp solves the linear relaxation of a plan: how much of each pattern, at the least cost, covers every need
// without exceeding the stock. It is a revised simplex with a full inverse, small enough to be set up anew at every
// place of a search. Its figures guide; who needs a bound computes it again from the prices.
package lp

// Master is the relaxation: needs to be covered, limits not to be exceeded, columns that may be taken in any amount.
type Master struct {
	m     int // rows: needs, then limits
	cols  []Column
	basis []int     // column of each row
	inv   []float64 // m×m
	x     []float64 // value of each row's column
	y     []float64 // price of each row
}

// Column is a pattern: what it gives to or takes from the rows, and its cost.
type Column struct {
	Row  []int
	Val  []float64
	Cost float64
	Tag  int // the caller's own; -1 for columns that stand in
	in   bool
}

const (
	tiny   = 1e-9 // a reduced cost nearer zero counts as zero
	thin   = 1e-8 // smallest pivot
	redoAt = 50   // pivots between fresh prices
)

// New starts from one stand-in column a need (dear, so that patterns push it out) and the slack of each limit.
func New(need []float64, dear float64, limit []float64) *Master {
	m := len(need) + len(limit)
	l := &Master{m: m, inv: make([]float64, m*m), x: make([]float64, m), y: make([]float64, m)}
	for i, b := range append(append([]float64{}, need...), limit...) {
		c := Column{Row: []int{i}, Val: []float64{1}, Tag: -1, in: true}
		if i < len(need) {
			c.Cost = dear
		}
		l.cols = append(l.cols, c)
		l.basis = append(l.basis, i)
		l.inv[i*m+i] = 1
		l.x[i] = b
	}
	for i := range need { // surplus
		l.cols = append(l.cols, Column{Row: []int{i}, Val: []float64{-1}, Tag: -1})
	}
	return l
}

// Add offers a column.
func (l *Master) Add(c Column) { l.cols = append(l.cols, c) }

// Value is the cost of the amounts taken.
func (l *Master) Value() float64 {
	v := 0.0
	for i, b := range l.basis {
		v += l.cols[b].Cost * l.x[i]
	}
	return v
}

// Price of a row: what one more of it would cost.
func (l *Master) Price(row int) float64 { return l.y[row] }

// Taken calls with the tag and the amount of every column taken.
func (l *Master) Taken(visit func(tag int, amount float64)) {
	for i, b := range l.basis {
		visit(l.cols[b].Tag, l.x[i])
	}
}

func (l *Master) price() {
	for j := range l.y {
		l.y[j] = 0
	}
	for i, b := range l.basis {
		c := l.cols[b].Cost
		if c == 0 {
			continue
		}
		row := l.inv[i*l.m : (i+1)*l.m]
		for j, v := range row {
			l.y[j] += c * v
		}
	}
}

// Run pivots until no column lowers the cost. It returns false when it does not settle.
func (l *Master) Run() bool {
	d := make([]float64, l.m)
	l.price()
	fresh := true // prices are carried along from pivot to pivot and taken afresh before they are believed
	for step := 0; step < 60*(l.m+10); step++ {
		if step%redoAt == redoAt-1 {
			l.price()
		}
		enter, least := -1, -tiny
		for j := range l.cols {
			c := &l.cols[j]
			if c.in {
				continue
			}
			r := c.Cost
			for i, k := range c.Row {
				r -= l.y[k] * c.Val[i]
			}
			if r < least {
				enter, least = j, r
			}
		}
		if enter < 0 {
			if fresh {
				return true
			}
			l.price()
			fresh = true
			continue
		}
		if !l.enter(enter, least, d) {
			return false
		}
		fresh = false
	}
	return false
}

// enter brings a column in; reduced is its reduced cost, by which the prices move.
func (l *Master) enter(j int, reduced float64, d []float64) bool {
	c := &l.cols[j]
	for i := range d {
		d[i] = 0
		for t, k := range c.Row {
			d[i] += l.inv[i*l.m+k] * c.Val[t]
		}
	}
	leave, ratio := -1, 0.0
	for i, v := range d {
		if v < thin {
			continue
		}
		q := max(l.x[i], 0) / v
		if leave < 0 || q < ratio-1e-12 || (q <= ratio+1e-12 && v > d[leave]) {
			leave, ratio = i, q
		}
	}
	if leave < 0 {
		return false
	}
	l.turn(leave, j, d)
	for k, v := range l.inv[leave*l.m : (leave+1)*l.m] {
		l.y[k] += reduced * v
	}
	return true
}

func (l *Master) turn(r, j int, d []float64) {
	m := l.m
	own := l.inv[r*m : (r+1)*m]
	p := 1 / d[r]
	for k := range own {
		own[k] *= p
	}
	l.x[r] *= p
	for i, v := range d {
		if i == r || v == 0 {
			continue
		}
		row := l.inv[i*m : (i+1)*m]
		for k, o := range own {
			row[k] -= v * o
		}
		l.x[i] -= v * l.x[r]
	}
	l.cols[l.basis[r]].in = false
	l.cols[j].in = true
	l.basis[r] = j
}
