package view

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

func TestTwoCubesTouchingShowTheirJointOnce(t *testing.T) {
	s := scene(box(0, 0, 0, 10, 10, 10), box(10, 0, 0, 20, 10, 10))
	wantLines(t, s.Project(Front), `
		visible a: 0,0 0,10
		visible a: 0,0 10,0
		visible a: 0,10 10,10
		visible a: 10,0 10,10
		visible b: 10,0 20,0
		visible b: 10,10 20,10
		visible b: 20,0 20,10
	`)
	// From the end the farther cube lies wholly behind the nearer, so nothing of it is left to draw.
	wantLines(t, s.Project(End), `
		visible b: 0,0 0,10
		visible b: 0,0 10,0
		visible b: 0,10 10,10
		visible b: 10,0 10,10
	`)
}

func TestSmallBoxInFrontOfLargeOne(t *testing.T) {
	wantLines(t, scene(box(0, 10, 0, 30, 20, 30), box(10, 0, -5, 20, 5, 10)).Project(Front), `
		visible a: 0,0 0,30
		visible a: 0,0 10,0
		visible a: 0,30 30,30
		visible a: 20,0 30,0
		visible a: 30,0 30,30
		visible b: 10,-5 10,10
		visible b: 10,-5 20,-5
		visible b: 10,10 20,10
		visible b: 20,-5 20,10
		hidden a: 10,0 20,0
	`)
}

func TestFootOfABoardStandingOnAnotherIsVisible(t *testing.T) {
	s := scene(box(0, 0, 0, 30, 30, 5), box(10, 10, 5, 20, 20, 25))
	wantLines(t, s.Project(Top), `
		visible a: 0,0 0,30
		visible a: 0,0 30,0
		visible a: 0,30 30,30
		visible a: 30,0 30,30
		visible b: 10,10 10,20
		visible b: 10,10 20,10
		visible b: 10,20 20,20
		visible b: 20,10 20,20
	`)
	// From below the foot lies in the contact, behind the lower board's wood.
	wantLines(t, s.Project(Bottom), `
		visible a: 0,-30 0,0
		visible a: 0,-30 30,-30
		visible a: 0,0 30,0
		visible a: 30,-30 30,0
		hidden b: 10,-10 20,-10
		hidden b: 10,-20 10,-10
		hidden b: 10,-20 20,-20
		hidden b: 20,-20 20,-10
	`)
}

// A finger joint in one plane: the teeth of one comb fill the gaps of the other.
func TestCombsInEachOtherShowEveryCheekOnce(t *testing.T) {
	w := []float64{10, 15, 20, 15, 10}
	a := comb(0, 100, 20, 0, 12, true, w...)
	b := comb(0, 100, 20, 0, 12, false, w...)
	turned := mgl64.Translate3D(180, 70, 0).Mul4(mgl64.HomogRotate3DZ(math.Pi))
	wantLines(t, scene(a, b.Transform(turned)).Project(Top), `
		visible a: 0,0 0,70
		visible a: 0,0 100,0
		visible a: 0,70 100,70
		visible a: 100,0 100,10
		visible a: 80,10 100,10
		visible a: 80,10 80,25
		visible a: 80,25 100,25
		visible a: 100,25 100,45
		visible a: 80,45 100,45
		visible a: 80,45 80,60
		visible a: 80,60 100,60
		visible a: 100,60 100,70
		visible b: 100,0 180,0
		visible b: 100,70 180,70
		visible b: 180,0 180,70
	`)
}

// The same joint from its edge: one board on each side, and the cheeks behind it hidden.
func TestCombsInEachOtherFromTheEdge(t *testing.T) {
	w := []float64{10, 15, 20, 15, 10}
	a := comb(0, 100, 20, 0, 12, true, w...)
	b := comb(0, 100, 20, 0, 12, false, w...)
	turned := mgl64.Translate3D(180, 70, 0).Mul4(mgl64.HomogRotate3DZ(math.Pi))
	wantLines(t, scene(a, b.Transform(turned)).Project(Front), `
		visible a: 0,0 0,12
		visible a: 0,0 100,0
		visible a: 0,12 100,12
		visible a: 100,0 100,12
		visible b: 100,0 180,0
		visible b: 100,12 180,12
		visible b: 180,0 180,12
		hidden a: 80,0 80,12
	`)
}
