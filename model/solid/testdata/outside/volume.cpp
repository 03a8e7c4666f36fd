// Builds bodies by boolean operations and prints their volume and area: a check by another route
// and another library (Open CASCADE). Reads one command a line, works on a stack of bodies.
//   box x0 y0 z0 x1 y1 z1        push a box
//   cylinder p a r l             push a cylinder from p (three numbers) along a, radius, length
//   keep n d                     keep of the top body what has n.p <= d
//   cut | add | common           replace the two top bodies by their difference, union or intersection
//   place m                      move the top body by a rotation and a shift (three rows of four numbers)
//   print                        pop the top body: volume, area, 1 when valid
#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <GProp_GProps.hxx>
#include <cstdio>
#include <iostream>
#include <string>
#include <vector>

static const double FAR = 2000;

static TopoDS_Shape beyond(double x, double y, double z, double d) {
  gp_Dir n(x, y, z);
  gp_Pnt p(x * d, y * d, z * d);
  gp_Ax2 at(p, n);
  at.Translate(gp_Vec(at.XDirection()) * (-FAR) + gp_Vec(at.YDirection()) * (-FAR));
  return BRepPrimAPI_MakeBox(at, 2 * FAR, 2 * FAR, FAR).Solid();
}

static TopoDS_Shape pop(std::vector<TopoDS_Shape>& s) {
  TopoDS_Shape t = s.back();
  s.pop_back();
  return t;
}

int main() {
  std::vector<TopoDS_Shape> s;
  std::string word;
  while (std::cin >> word) {
    double a[12];
    auto read = [&](int n) { for (int i = 0; i < n; i++) std::cin >> a[i]; };
    if (word == "box") {
      read(6);
      s.push_back(BRepPrimAPI_MakeBox(gp_Pnt(a[0], a[1], a[2]), gp_Pnt(a[3], a[4], a[5])).Solid());
    } else if (word == "cylinder") {
      read(8);
      gp_Ax2 at(gp_Pnt(a[0], a[1], a[2]), gp_Dir(a[3], a[4], a[5]));
      s.push_back(BRepPrimAPI_MakeCylinder(at, a[6], a[7]).Solid());
    } else if (word == "keep") {
      read(4);
      s.push_back(BRepAlgoAPI_Cut(pop(s), beyond(a[0], a[1], a[2], a[3])).Shape());
    } else if (word == "cut") {
      TopoDS_Shape tool = pop(s), body = pop(s);
      s.push_back(BRepAlgoAPI_Cut(body, tool).Shape());
    } else if (word == "add") {
      TopoDS_Shape other = pop(s), body = pop(s);
      s.push_back(BRepAlgoAPI_Fuse(body, other).Shape());
    } else if (word == "common") {
      TopoDS_Shape other = pop(s), body = pop(s);
      s.push_back(BRepAlgoAPI_Common(body, other).Shape());
    } else if (word == "place") {
      read(12);
      gp_Trsf t;
      t.SetValues(a[0], a[1], a[2], a[3], a[4], a[5], a[6], a[7], a[8], a[9], a[10], a[11]);
      s.push_back(BRepBuilderAPI_Transform(pop(s), t, true).Shape());
    } else if (word == "print") {
      GProp_GProps v, f;
      TopoDS_Shape t = pop(s);
      BRepGProp::VolumeProperties(t, v, 1e-10);
      BRepGProp::SurfaceProperties(t, f, 1e-10);
      std::printf("%.12g %.12g %d\n", v.Mass(), f.Mass(), BRepCheck_Analyzer(t).IsValid() ? 1 : 0);
    } else {
      std::cerr << "unknown command " << word << "\n";
      return 2;
    }
  }
}
