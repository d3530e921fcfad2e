"""Headers only: conan create cmake/packaging/conan, from a tree that holds the sources."""

import os
import re

from conan import ConanFile
from conan.tools.build import check_min_cppstd
from conan.tools.files import copy, load
from conan.tools.layout import basic_layout


def top_of(recipe_folder):
    return os.path.normpath(os.path.join(recipe_folder, "..", "..", ".."))


class WeldloopRecipe(ConanFile):
    name = "weldloop"
    description = "Rates every conductor and connection of an arc-welding power circuit"
    license = "BSL-1.0"
    package_type = "header-library"
    settings = "os", "compiler", "build_type", "arch"
    options = {"io": [True, False]}
    default_options = {"io": False}
    no_copy_source = True

    def set_version(self):
        text = load(self, os.path.join(top_of(self.recipe_folder), "include", "weldloop", "version.hpp"))
        self.version = ".".join(re.findall(r"#define WELDLOOP_VERSION_[A-Z]+ (\d+)", text))

    def export_sources(self):
        top = top_of(self.recipe_folder)
        copy(self, "include/*", top, self.export_sources_folder)
        copy(self, "LICENSE", top, self.export_sources_folder)

    def layout(self):
        basic_layout(self)

    def requirements(self):
        self.requires("boost/[>=1.74]", transitive_headers=True, options={"header_only": True})
        if self.options.io:
            self.requires("nlohmann_json/[>=3.11]", transitive_headers=True)
            self.requires("tomlplusplus/[>=3.3 <4]", transitive_headers=True)

    def validate(self):
        check_min_cppstd(self, 20)

    def package(self):
        copy(self, "*.hpp", os.path.join(self.source_folder, "include"), os.path.join(self.package_folder, "include"))
        copy(self, "LICENSE", self.source_folder, os.path.join(self.package_folder, "licenses"))

    def package_id(self):
        self.info.clear()

    def package_info(self):
        self.cpp_info.bindirs = []
        self.cpp_info.libdirs = []
        if self.options.io:
            self.cpp_info.defines = ["TOML_HEADER_ONLY=1"]
