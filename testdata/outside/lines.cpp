// What is seen of solids with plane faces, by the exact hidden-line algorithm of a general-purpose geometry kernel.
//
// Reads from standard input: the number of views, and for each its right, up and toward; the number of solids, and for
// each the number of its corners, the corners, the number of its faces, and for each the number of its loops and for each
// of these the number of its corners and the corners by number. Writes for each view the lines that are seen, one a
// row, as x0 y0 x1 y1 in the picture, and then "end".
#include <BRepAdaptor_Curve.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepLib.hxx>
#include <BRep_Builder.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <HLRBRep_HLRToShape.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Solid.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pln.hxx>
#include <cstdio>
#include <iostream>
#include <map>
#include <vector>

static gp_XYZ readXYZ() {
  double x, y, z;
  std::cin >> x >> y >> z;
  return gp_XYZ(x, y, z);
}

static TopoDS_Shape readSolid() {
  int n;
  std::cin >> n;
  std::vector<gp_XYZ> at(n);
  std::vector<TopoDS_Vertex> corner(n);
  for (int i = 0; i < n; i++) {
    at[i] = readXYZ();
    corner[i] = BRepBuilderAPI_MakeVertex(gp_Pnt(at[i]));
  }
  std::map<std::pair<int, int>, TopoDS_Edge> edges;
  auto edge = [&](int a, int b) {
    auto key = std::make_pair(std::min(a, b), std::max(a, b));
    auto found = edges.find(key);
    if (found == edges.end())
      found = edges.emplace(key, BRepBuilderAPI_MakeEdge(corner[key.first], corner[key.second]).Edge()).first;
    return a < b ? found->second : TopoDS::Edge(found->second.Reversed());
  };
  BRep_Builder build;
  TopoDS_Shell shell;
  build.MakeShell(shell);
  int faces;
  std::cin >> faces;
  for (int f = 0; f < faces; f++) {
    int loops;
    std::cin >> loops;
    std::vector<TopoDS_Wire> wires;
    gp_XYZ normal(0, 0, 0), middle(0, 0, 0);
    for (int l = 0; l < loops; l++) {
      int k;
      std::cin >> k;
      std::vector<int> loop(k);
      for (int &v : loop) std::cin >> v;
      BRepBuilderAPI_MakeWire wire;
      for (int i = 0; i < k; i++) {
        int a = loop[i], b = loop[(i + 1) % k];
        wire.Add(edge(a, b));
        if (l == 0) {
          normal += (at[a] - at[loop[0]]).Crossed(at[b] - at[loop[0]]);
          middle += at[a] / k;
        }
      }
      if (!wire.IsDone()) {
        std::fprintf(stderr, "face %d: loop %d does not close\n", f, l);
        std::exit(1);
      }
      wires.push_back(wire.Wire());
    }
    BRepBuilderAPI_MakeFace face(gp_Pln(gp_Pnt(middle), gp_Dir(normal)), wires[0], true);
    for (int l = 1; l < loops; l++) face.Add(wires[l]);
    if (!face.IsDone()) {
      std::fprintf(stderr, "face %d cannot be built\n", f);
      std::exit(1);
    }
    build.Add(shell, face.Face());
  }
  shell.Closed(true);
  TopoDS_Solid solid;
  build.MakeSolid(solid);
  build.Add(solid, shell);
  return solid;
}

static void write(TopoDS_Shape lines) {
  if (lines.IsNull()) return;
  BRepLib::BuildCurves3d(lines);
  for (TopExp_Explorer e(lines, TopAbs_EDGE); e.More(); e.Next()) {
    BRepAdaptor_Curve c(TopoDS::Edge(e.Current()));
    gp_Pnt a = c.Value(c.FirstParameter()), b = c.Value(c.LastParameter());
    std::printf("%.9f %.9f %.9f %.9f\n", a.X(), a.Y(), b.X(), b.Y());
  }
}

int main() {
  int n;
  std::cin >> n;
  std::vector<gp_Ax2> views;
  for (int i = 0; i < n; i++) {
    gp_XYZ right = readXYZ(), up = readXYZ(), toward = readXYZ();
    (void)up; // toward × right
    views.push_back(gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(toward), gp_Dir(right)));
  }
  int m;
  std::cin >> m;
  std::vector<TopoDS_Shape> solids;
  for (int i = 0; i < m; i++) solids.push_back(readSolid());
  for (const gp_Ax2 &v : views) {
    Handle(HLRBRep_Algo) algo = new HLRBRep_Algo();
    for (const TopoDS_Shape &s : solids) algo->Add(s);
    algo->Projector(HLRAlgo_Projector(v));
    algo->Update();
    algo->Hide();
    HLRBRep_HLRToShape seen(algo);
    write(seen.VCompound());
    write(seen.Rg1LineVCompound());
    write(seen.OutLineVCompound());
    std::printf("end\n");
  }
}
