package motion

import (
	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/part"
)

// Free tells whether a part may begin to move in a direction, world frame, without pushing into
// another that it touches.
func Free(moving, still *part.Part, way mgl64.Vec3) bool {
	for _, n := range new(eye).contacts(newBody(moving), newBody(still)) {
		if way.Dot(n) > sameWay {
			return false
		}
	}
	return true
}

// GoesClear tells whether a part that moves along a way, world frame, strikes another nowhere on it.
func GoesClear(moving, still *part.Part, way mgl64.Vec3) bool {
	return new(eye).goesClear(newBody(moving), newBody(still), way)
}

// Contacts gives the normals, out of one part into another, of the faces where they touch.
func Contacts(a, b *part.Part) []mgl64.Vec3 { return new(eye).contacts(newBody(a), newBody(b)) }

// ContactsByArea is Contacts by nothing but the areas that faces share.
func ContactsByArea(a, b *part.Part) []mgl64.Vec3 {
	e, p, q := new(eye), newBody(a), newBody(b)
	var out []mgl64.Vec3
	for i, n := range p.ways {
		j := indexOf(q.ways, n.Mul(-1))
		if j < 0 {
			continue
		}
		placeA, placeB := sight(n).Mul4(a.Place), sight(n.Mul(-1)).Mul4(b.Place)
		area := 0.
		for k := range p.flats[i] {
			for l := range q.flats[j] {
				f, g := &p.flats[i][k], &q.flats[j][l]
				if f.d+g.d < touching && f.d+g.d > -touching {
					area = max(area, e.shared(e.look(p, f, asItIs, &placeA), e.look(q, g, asItIs, &placeB), grazes))
				}
			}
		}
		if area > grazes {
			out = append(out, n)
		}
	}
	return out
}

// Recedes tells whether a plane between two parts shows that the one that moves along a way does not strike the other;
// LooksClear whether looking along the way shows it.
func Recedes(moving, still *part.Part, way mgl64.Vec3) bool {
	return newBody(moving).recedes(newBody(still), way)
}

func LooksClear(moving, still *part.Part, way mgl64.Vec3) bool {
	return new(eye).goesClearOf(newBody(moving), newBody(still), way, asItIs)
}
