// An eighth of a sphere of radius B: the quarter of a half space z <= 0 that holds one of four spots of radius 1 at the
// corners of a square of side D (D = 0: one spot in the middle). Sink: the far sphere.
DefineConstant[ D = 10, B = 300, Fine = 0.02 ];
SetFactory("OpenCASCADE");
Sphere(1) = {0, 0, 0, B, -Pi/2, 0, Pi/2};
Disk(100) = {D/2, D/2, 0, 1};
BooleanFragments{ Volume{1}; Delete; }{ Surface{100}; Delete; }
e = 1e-3;
spot() = Surface In BoundingBox {D/2 - 1 - e, D/2 - 1 - e, -e, D/2 + 1 + e, D/2 + 1 + e, e};
If (D == 0) spot() = Surface In BoundingBox {-e, -e, -e, 1 + e, 1 + e, e}; EndIf
all() = Boundary{ Volume{1}; };
far() = {};
For i In {0:#all()-1}
  box() = BoundingBox Surface{all(i)};
  If (box(0) < 1 && box(1) < 1 && box(2) < -0.9*B && box(3) > 0.9*B && box(4) > 0.9*B) far() += all(i); EndIf
EndFor
edge() = Boundary{ Surface{spot()}; };
Field[1] = Distance; Field[1].EdgesList = {edge()}; Field[1].NNodesByEdge = 600;
Field[2] = MathEval; Field[2].F = Sprintf("%g + 0.3*F1", Fine);
Background Field = 2;
Mesh.MeshSizeExtendFromBoundary = 0; Mesh.MeshSizeFromPoints = 0; Mesh.MeshSizeMax = B/6;
Mesh.ElementOrder = 2;
Physical Volume(11) = {1};
Physical Surface(21) = {spot()};
Physical Surface(22) = {far()};
