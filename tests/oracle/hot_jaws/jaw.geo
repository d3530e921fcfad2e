// One jaw of a clamp on hot work, half the work's thickness under it: the other jaw is the mirror image. The jaw touches by
// a square pad in its middle; beside the pad there is air of the height of its teeth. Half of it: y = 0 is a mirror.
// Physical: 1 work, 2 jaw, 3 pad, 4 air; 5 face of the work beside the jaw, 6 jaw's faces to the air, 7 its end at the pivot.
SetFactory("OpenCASCADE");
DefineConstant[ Side = 0.3, Half = 0.005, Long = 0.03, Wide = 0.04, Thick = 0.013, Pad = 0.01095, Gap = 0.0015,
                Fine = 0.0015, Coarse = 0.015 ];
Box(1) = {-Side/2, 0, -Half, Side, Side/2, Half};
Box(2) = {-Long/2, 0, Gap, Long, Wide/2, Thick};
Box(3) = {-Pad/2, 0, 0, Pad, Pad/2, Gap};
Box(4) = {-Long/2, 0, 0, Long, Wide/2, Gap};
BooleanFragments{ Volume{1, 2, 3, 4}; Delete; }{}
e = 1e-6;
pad() = Volume In BoundingBox{-Pad/2-e, -e, -e, Pad/2+e, Pad/2+e, Gap+e};
jaw() = Volume In BoundingBox{-Long/2-e, -e, Gap-e, Long/2+e, Wide/2+e, Gap+Thick+e};
work() = Volume In BoundingBox{-Side, -e, -Half-e, Side, Side, e};
air() = Volume{:};
air() -= {pad(), jaw(), work()};
Physical Volume(1) = {work()};
Physical Volume(2) = {jaw()};
Physical Volume(3) = {pad()};
Physical Volume(4) = {air()};
top() = Surface In BoundingBox{-Side, -e, -e, Side, Side, e};
under() = Surface In BoundingBox{-Long/2-e, -e, -e, Long/2+e, Wide/2+e, e};
top() -= {under()};
Physical Surface(5) = {top()};
end() = Surface In BoundingBox{Long/2-e, -e, Gap-e, Long/2+e, Wide/2+e, Gap+Thick+e};
other() = Surface In BoundingBox{-Long/2-e, -e, Gap-e, -Long/2+e, Wide/2+e, Gap+Thick+e};
side() = Surface In BoundingBox{-Long/2-e, Wide/2-e, Gap-e, Long/2+e, Wide/2+e, Gap+Thick+e};
lid() = Surface In BoundingBox{-Long/2-e, -e, Gap+Thick-e, Long/2+e, Wide/2+e, Gap+Thick+e};
Physical Surface(6) = {other(), side(), lid()};
Physical Surface(7) = {end()};
Mesh.MeshSizeMin = Fine;
Mesh.MeshSizeMax = Coarse;
Field[1] = Box; Field[1].VIn = Fine; Field[1].VOut = Coarse; Field[1].XMin = -Long; Field[1].XMax = Long;
Field[1].YMin = -1; Field[1].YMax = Wide; Field[1].ZMin = -1; Field[1].ZMax = 1; Field[1].Thickness = 0.05;
Background Field = 1;
