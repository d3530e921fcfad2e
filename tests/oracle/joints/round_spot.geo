// One round spot of radius 1 on a body of depth H and radius B, half plane x >= 0, y <= 0, turned about x = 0.
// Sink 0: far side and rim (half space); 1: rim only (sheet); 2: far side only (bar).
DefineConstant[ B = 300, H = 300, Sink = 0, Fine = 0.004 ];
SetFactory("Built-in");
Coarse = Hypot(B, H)/25;
Point(1) = {0, 0, 0, 0.1};
Point(2) = {1, 0, 0, Fine};
Point(3) = {B, 0, 0, Coarse};
Point(4) = {B, -H, 0, Coarse};
Point(5) = {0, -H, 0, Coarse};
Line(1) = {1, 2}; Line(2) = {2, 3}; Line(3) = {3, 4}; Line(4) = {4, 5}; Line(5) = {5, 1};
Curve Loop(1) = {1, 2, 3, 4, 5}; Plane Surface(1) = {1};
Field[1] = Distance; Field[1].NodesList = {2};
Field[2] = MathEval; Field[2].F = Sprintf("%g + F1*0.12", Fine);
Field[3] = MathEval; Field[3].F = Sprintf("0.03 + 0.12*Sqrt(x*x + y*y) + 0*%g", Fine);
Field[4] = Min; Field[4].FieldsList = {2, 3};
Background Field = 4;
Mesh.MeshSizeExtendFromBoundary = 0; Mesh.MeshSizeFromPoints = 0; Mesh.MeshSizeMax = Coarse;
Mesh.ElementOrder = 2;
Physical Surface(11) = {1};
Physical Curve(21) = {1};
If (Sink == 0) Physical Curve(22) = {3, 4}; EndIf
If (Sink == 1) Physical Curve(22) = {3}; EndIf
If (Sink == 2) Physical Curve(22) = {4}; EndIf
