package yield

import (
	"context"
	"slices"

	"splaywright/model/form"
	"splaywright/model/part"
)

// Shop finds what to buy as the design wants it: wood for the whole piece, or, with plan.missing, for the parts that the
// boards on hand do not yield. Half of the time is for the plan of these, which is the one that Solve finds in that time.
func Shop(ctx context.Context, p *form.Piece) (Result, error) {
	if !p.Design.Plan.Missing || len(p.Design.OnHand) == 0 {
		return Buy(ctx, p)
	}
	first, stop := within(ctx, 2)
	onHand, err := Solve(first, p)
	stop()
	if err != nil {
		return onHand, err
	}
	return BuyMissing(ctx, p, onHand)
}

// BuyMissing finds the cheapest boards to buy for the parts that a plan of the boards on hand leaves without a place. That
// plan stays as it is: what it yields is not bought, and what stays together for its grain is bought together.
func BuyMissing(ctx context.Context, p *form.Piece, onHand Result) (Result, error) {
	yielded := onHand.Yields()
	pieces := max(p.Design.Plan.Pieces, 1)
	rest := *made(p)
	rest.Parts = slices.DeleteFunc(slices.Clone(rest.Parts), func(q *part.Part) bool {
		return slices.ContainsFunc(yielded, func(y *part.Part) bool { return y.ID == q.ID })
	})
	r := Result{Task: Task(&rest), Pieces: pieces}
	if len(rest.Parts) == 0 {
		r.Plan.Proven = true
		r.OnHand = yielded
		return r, nil
	}
	r, err := Buy(ctx, &rest)
	r.OnHand, r.Pieces = yielded, pieces
	return r, err
}

// Yields are the parts that come out of a plan, in no order.
func (r Result) Yields() []*part.Part {
	var out []*part.Part
	for _, q := range r.Which() {
		if !slices.Contains(out, q) { // strips are several
			out = append(out, q)
		}
	}
	return out
}
