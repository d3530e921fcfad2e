"""conan_check.py TOP: runs cmake/packaging/conan/conanfile.py of the tree TOP without Conan, which is not at hand, on
stand-ins for the few names it takes from it. They follow Conan 2's reference and refuse what that does not have; whether
Conan itself takes the recipe is not shown by it."""

import fnmatch
import importlib.util
import pathlib
import shutil
import sys
import tempfile
import types

top = pathlib.Path(sys.argv[1]).resolve()
faults = []


def hold(is_so, what):
    if not is_so:
        faults.append(what)


def module(name, **holds):
    made = types.ModuleType(name)
    vars(made).update(holds)
    sys.modules[name] = made


class ConanFile:
    def __init__(self, recipe_folder):
        self.recipe_folder = str(recipe_folder)
        self.required = {}
        self.info = types.SimpleNamespace(clear=lambda: None)
        self.cpp_info = types.SimpleNamespace(bindirs=["bin"], libdirs=["lib"], defines=[])
        self.options = types.SimpleNamespace(**self.default_options)

    def requires(self, ref, *, transitive_headers=False, options=None):
        name, versions = ref.split("/")
        hold(versions[0] == "[" and versions[-1] == "]", f"{ref} is no range of versions")
        hold(transitive_headers, f"{name}: its headers are included by ours")
        self.required[name] = options or {}


def copy(conanfile, pattern, src, dst):
    taken = []
    for path in sorted(pathlib.Path(src).rglob("*")):
        inside = path.relative_to(src).as_posix()
        if path.is_file() and fnmatch.fnmatchcase(inside, pattern):
            goes_to = pathlib.Path(dst) / inside
            goes_to.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(path, goes_to)
            taken.append(str(goes_to))
    hold(taken, f"nothing to copy: {pattern} in {src}")
    return taken


def load(conanfile, path):
    return pathlib.Path(path).read_text(encoding="utf-8")


wanted_standards = []
module("conan", ConanFile=ConanFile)
module("conan.tools")
module("conan.tools.build", check_min_cppstd=lambda conanfile, cppstd: wanted_standards.append(str(cppstd)))
module("conan.tools.files", copy=copy, load=load)
module("conan.tools.layout", basic_layout=lambda conanfile, src_folder=".": None)

recipe_file = top / "cmake" / "packaging" / "conan" / "conanfile.py"
spec = importlib.util.spec_from_file_location("conanfile", recipe_file)
conanfile = importlib.util.module_from_spec(spec)
sys.dont_write_bytecode = True
spec.loader.exec_module(conanfile)

version_text = (top / "include" / "weldloop" / "version.hpp").read_text(encoding="utf-8")
numbers = {line.split()[1]: line.split()[2] for line in version_text.splitlines() if line.startswith("#define")}
version = ".".join(numbers[f"WELDLOOP_VERSION_{part}"] for part in ("MAJOR", "MINOR", "PATCH"))

with tempfile.TemporaryDirectory() as folder:
    recipe = conanfile.WeldloopRecipe(recipe_file.parent)
    recipe.set_version()
    hold(recipe.version == version, f"version {recipe.version}, not {version}")
    recipe.export_sources_folder = recipe.source_folder = str(pathlib.Path(folder) / "sources")
    recipe.package_folder = str(pathlib.Path(folder) / "package")
    recipe.export_sources()
    recipe.layout()
    recipe.validate()
    hold(wanted_standards == ["20"], f"standards asked for: {wanted_standards}")
    recipe.package()
    recipe.package_id()

    def tree(path):
        return {p.relative_to(path): p.read_bytes() for p in pathlib.Path(path).rglob("*") if p.is_file()}

    hold(tree(recipe.package_folder + "/include") == tree(top / "include"), "the package holds other headers")
    hold(
        (pathlib.Path(recipe.package_folder) / "licenses" / "LICENSE").read_bytes() == (top / "LICENSE").read_bytes(),
        "the package holds another license",
    )

    for io, wanted in ((False, ["boost"]), (True, ["boost", "nlohmann_json", "tomlplusplus"])):
        asked = conanfile.WeldloopRecipe(recipe_file.parent)
        asked.options.io = io
        asked.requirements()
        asked.package_info()
        hold(list(asked.required) == wanted, f"io={io}: requires {list(asked.required)}")
        hold(asked.required["boost"] == {"header_only": True}, "Boost is wanted as headers")
        hold(asked.cpp_info.bindirs == [] and asked.cpp_info.libdirs == [], "there is no library")
        hold(asked.cpp_info.defines == (["TOML_HEADER_ONLY=1"] if io else []), f"io={io}: {asked.cpp_info.defines}")

for fault in faults:
    print("FAULT:", fault)
sys.exit(1 if faults else 0)
