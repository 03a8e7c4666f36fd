package solid

import (
	"fmt"

	"github.com/go-gl/mathgl/mgl64"
)

// Volume is the volume that the mesh encloses, mm³.
func (m *Mesh) Volume() float64 {
	if len(m.Vertices) == 0 {
		return 0
	}
	o := m.Vertices[0]
	var sum float64
	for i := range m.Faces {
		f := &m.Faces[i]
		p := m.Vertices[f.Loops[0][0]].Sub(o)
		sum += p.Dot(m.areaVector(f))
	}
	return sum / 3
}

// areaVector is the face's area along its normal, holes taken off.
func (m *Mesh) areaVector(f *MeshFace) mgl64.Vec3 {
	var sum mgl64.Vec3
	for _, l := range f.Loops {
		ref := m.Vertices[l[0]]
		for i := 1; i+1 < len(l); i++ {
			a, b := m.Vertices[l[i]].Sub(ref), m.Vertices[l[i+1]].Sub(ref)
			sum = sum.Add(a.Cross(b))
		}
	}
	return sum.Mul(0.5)
}

// Transform gives the mesh moved by m, a rotation and a shift.
func (m *Mesh) Transform(by mgl64.Mat4) *Mesh {
	moved := &Mesh{
		Vertices: make([]mgl64.Vec3, len(m.Vertices)),
		Faces:    make([]MeshFace, len(m.Faces)),
		Edges:    m.Edges,
	}
	for i, v := range m.Vertices {
		moved.Vertices[i] = by.Mul4x1(v.Vec4(1)).Vec3()
	}
	for i, f := range m.Faces {
		f.Normal = by.Mul4x1(f.Normal.Vec4(0)).Vec3()
		moved.Faces[i] = f
	}
	return moved
}

// Transform gives the plane moved by m, a rotation and a shift.
func (p Plane) Transform(by mgl64.Mat4) Plane {
	n := mgl64.Vec3{
		by[0]*p.N[0] + by[4]*p.N[1] + by[8]*p.N[2],
		by[1]*p.N[0] + by[5]*p.N[1] + by[9]*p.N[2],
		by[2]*p.N[0] + by[6]*p.N[1] + by[10]*p.N[2]}
	return Plane{N: n, D: p.D*n.LenSqr() + n[0]*by[12] + n[1]*by[13] + n[2]*by[14]}
}

// Check tells whether the mesh is closed: every side of a face is walked once each way, and
// every edge lies between the two faces that it names.
func (m *Mesh) Check() error {
	walked := make(map[[2]int32]int, 2*len(m.Edges))
	for i := range m.Faces {
		for _, l := range m.Faces[i].Loops {
			for j := range l {
				h := [2]int32{l[j], l[(j+1)%len(l)]}
				if k, twice := walked[h]; twice {
					return fmt.Errorf("faces %d and %d walk the same way from %d to %d", k, i, h[0], h[1])
				}
				walked[h] = i
			}
		}
	}
	for i, e := range m.Edges {
		a, okA := walked[[2]int32{e.From, e.To}]
		b, okB := walked[[2]int32{e.To, e.From}]
		if !okA || !okB || a != int(e.A) || b != int(e.B) {
			return fmt.Errorf("edge %d does not lie between faces %d and %d", i, e.A, e.B)
		}
	}
	if len(walked) != 2*len(m.Edges) {
		return fmt.Errorf("%d sides for %d edges", len(walked), len(m.Edges))
	}
	return nil
}
