// Two bars of thickness 1 that overlap by L, each going on for 6 thicknesses beyond; unit width. Layer: a thin layer of
// material 13 between them, of height Layer (0: the bars share the interface).
DefineConstant[ L = 5, Layer = 0, Size = 0.08, Fine = 0.002 ];
SetFactory("Built-in");
E = 6;
// lower bar from -E to L, upper from 0 to L + E
Point(1) = {-E, -1, 0}; Point(2) = {L, -1, 0}; Point(3) = {L, 0, 0}; Point(4) = {0, 0, 0}; Point(5) = {-E, 0, 0};
Line(1) = {1, 2}; Line(2) = {2, 3}; Line(3) = {3, 4}; Line(4) = {4, 5}; Line(5) = {5, 1};
Curve Loop(1) = {1, 2, 3, 4, 5}; Plane Surface(1) = {1};
If (Layer == 0)
  Point(6) = {L + E, 0, 0}; Point(7) = {L + E, 1, 0}; Point(8) = {0, 1, 0};
  Line(6) = {3, 6}; Line(7) = {6, 7}; Line(8) = {7, 8}; Line(9) = {8, 4};
  Curve Loop(2) = {-3, 6, 7, 8, 9}; Plane Surface(2) = {2};
  Field[1] = Distance; Field[1].NodesList = {3, 4};
Else
  Point(10) = {0, Layer, 0}; Point(11) = {L, Layer, 0};
  Point(6) = {L + E, Layer, 0}; Point(7) = {L + E, 1 + Layer, 0}; Point(8) = {0, 1 + Layer, 0};
  Line(10) = {10, 11}; Line(11) = {3, 11}; Line(12) = {10, 4};
  Line(6) = {11, 6}; Line(7) = {6, 7}; Line(8) = {7, 8}; Line(9) = {8, 10};
  Curve Loop(2) = {10, 6, 7, 8, 9}; Plane Surface(2) = {2};
  Curve Loop(3) = {-3, 11, -10, 12}; Plane Surface(3) = {3};
  Physical Surface(13) = {3};
  Transfinite Curve {11, 12} = 4;
  Transfinite Curve {3, 10} = 60*L;
  Transfinite Surface {3};
  Field[1] = Distance; Field[1].NodesList = {3, 4, 10, 11};
EndIf
Field[2] = MathEval; Field[2].F = Sprintf("Min(%g, %g + 0.1*F1)", Size, Fine);
Background Field = 2;
Mesh.MeshSizeExtendFromBoundary = 0; Mesh.MeshSizeFromPoints = 0;
Mesh.ElementOrder = 2;
Physical Surface(11) = {1}; Physical Surface(12) = {2};
Physical Curve(21) = {5}; Physical Curve(22) = {7};
