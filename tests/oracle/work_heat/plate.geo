// A plate with a weld of a square patch in its middle and a clamp's round patch of 10 mm radius at a distance along x.
// Half of it: the other is its mirror image in y = 0. Physical: 1 body, 2 weld, 3 grip, 4 other faces.
SetFactory("OpenCASCADE");
DefineConstant[ Side = 0.2, Thick = 0.01, Away = 0.06, Bead = 0.02, Fine = 0.004, Coarse = 0.01 ];
Box(1) = {-Side/2, 0, 0, Side, Side/2, Thick};
Rectangle(100) = {-Bead/2, 0, Thick, Bead, Bead/2};
Disk(101) = {Away, 0, Thick, 0.01, 0.01};
BooleanFragments{ Volume{1}; Delete; }{ Surface{100, 101}; Delete; }
e = 1e-5;
weld() = Surface In BoundingBox{-Bead/2-e, -e, Thick-e, Bead/2+e, Bead/2+e, Thick+e};
grip() = Surface In BoundingBox{Away-0.01-e, -e, Thick-e, Away+0.01+e, 0.01+e, Thick+e};
below() = Surface In BoundingBox{-Side, -e, -e, Side, Side, e};
above() = Surface In BoundingBox{-Side, -e, Thick-e, Side, Side, Thick+e};
above() -= {weld(), grip()};
Physical Volume(1) = {Volume{:}};
Physical Surface(2) = {weld()};
Physical Surface(3) = {grip()};
Physical Surface(4) = {below(), above()};
Mesh.MeshSizeMin = Fine;
Mesh.MeshSizeMax = Coarse;
Field[1] = Box; Field[1].VIn = Fine; Field[1].VOut = Coarse; Field[1].XMin = -Bead; Field[1].XMax = Away + 0.02;
Field[1].YMin = -1; Field[1].YMax = 0.02; Field[1].ZMin = -1; Field[1].ZMax = 1;
Background Field = 1;
