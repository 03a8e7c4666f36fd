package line

// master is the linear relaxation of a plan: how much of each pattern, at the least cost, covers every need without
// exceeding the stock. It is a revised simplex with a full inverse, small enough here to be set up anew at every
// place of the search. Its figures guide; bounds are computed again in whole numbers from its prices (see bound.go).
type master struct {
	m     int // rows: needs, then limits
	cols  []column
	basis []int     // column of each row
	inv   []float64 // m×m
	x     []float64 // value of each row's column
	y     []float64 // price of each row
}

type column struct {
	row  []int
	val  []float64
	cost float64
	pat  int // index into the pool, or -1
	in   bool
}

const (
	tiny   = 1e-9 // a reduced cost nearer zero counts as zero
	thin   = 1e-8 // smallest pivot
	redoAt = 50   // pivots between fresh prices
)

// newMaster starts from one stand-in column a need (dear, so that patterns push it out) and the slack of each limit.
func newMaster(need []float64, dear float64, limit []float64) *master {
	m := len(need) + len(limit)
	l := &master{m: m, inv: make([]float64, m*m), x: make([]float64, m), y: make([]float64, m)}
	for i, b := range append(append([]float64{}, need...), limit...) {
		c := column{row: []int{i}, val: []float64{1}, pat: -1, in: true}
		if i < len(need) {
			c.cost = dear
		}
		l.cols = append(l.cols, c)
		l.basis = append(l.basis, i)
		l.inv[i*m+i] = 1
		l.x[i] = b
	}
	for i := range need { // surplus
		l.cols = append(l.cols, column{row: []int{i}, val: []float64{-1}, pat: -1})
	}
	return l
}

func (l *master) add(c column) { l.cols = append(l.cols, c) }

func (l *master) value() float64 {
	v := 0.0
	for i, b := range l.basis {
		v += l.cols[b].cost * l.x[i]
	}
	return v
}

func (l *master) price() {
	for j := range l.y {
		l.y[j] = 0
	}
	for i, b := range l.basis {
		c := l.cols[b].cost
		if c == 0 {
			continue
		}
		row := l.inv[i*l.m : (i+1)*l.m]
		for j, v := range row {
			l.y[j] += c * v
		}
	}
}

// run pivots until no column lowers the cost. It returns false when it does not settle.
func (l *master) run() bool {
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
			r := c.cost
			for i, k := range c.row {
				r -= l.y[k] * c.val[i]
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
func (l *master) enter(j int, reduced float64, d []float64) bool {
	c := &l.cols[j]
	for i := range d {
		d[i] = 0
		for t, k := range c.row {
			d[i] += l.inv[i*l.m+k] * c.val[t]
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

func (l *master) turn(r, j int, d []float64) {
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
