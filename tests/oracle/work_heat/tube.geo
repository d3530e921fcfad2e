// A square tube with a weld all round its middle and a clamp's patch, 20 mm by 15.708 mm (the area of a disc of 10 mm
// radius), on one of its faces. A half in x is the weld's mirror image, but the clamp is on one side only: the whole
// length stands here, and a half in y. Physical: 1 body, 2 weld, 3 grip, 4 other outer faces.
SetFactory("OpenCASCADE");
DefineConstant[ Long = 0.6, Wide = 0.04, Wall = 0.003, Away = 0.1, Bead = 0.006, Fine = 0.004, Coarse = 0.008 ];
w = Wide/2;
Box(1) = {-Long/2, 0, -w, Long, w, Wide};
Box(2) = {-Long/2-0.01, -0.01, -w+Wall, Long+0.02, w-Wall+0.01, Wide-2*Wall};
BooleanDifference(3) = { Volume{1}; Delete; }{ Volume{2}; Delete; };
Rectangle(100) = {-Bead/2, 0, w, Bead, w};
Rectangle(101) = {-Bead/2, 0, -w, Bead, w};
Rectangle(103) = {Away-0.01, 0, w, 0.02, 0.0078540};
BooleanFragments{ Volume{3}; Delete; }{ Surface{100, 101, 103}; Delete; }
e = 1e-5;
weld() = Surface In BoundingBox{-Bead/2-e, -e, w-e, Bead/2+e, w+e, w+e};
weld() += Surface In BoundingBox{-Bead/2-e, -e, -w-e, Bead/2+e, w+e, -w+e};
grip() = Surface In BoundingBox{Away-0.01-e, -e, w-e, Away+0.01+e, 0.0078540+e, w+e};
outer() = Surface In BoundingBox{-Long, -e, w-e, Long, w+e, w+e};
outer() += Surface In BoundingBox{-Long, -e, -w-e, Long, w+e, -w+e};
outer() += Surface In BoundingBox{-Long, w-e, -w-e, Long, w+e, w+e};
outer() -= {weld(), grip()};
Physical Volume(1) = {Volume{:}};
Physical Surface(2) = {weld()};
Physical Surface(3) = {grip()};
Physical Surface(4) = {outer()};
Mesh.MeshSizeMin = Fine;
Mesh.MeshSizeMax = Coarse;
