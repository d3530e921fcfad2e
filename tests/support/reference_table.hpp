#pragma once
/// @file
/// The published tables in tests/reference.

#include <filesystem>
#include <string>
#include <string_view>

#include <weldloop/test/value_table.hpp>

namespace weldloop::test {

/// A table by its name.
class reference_table : public value_table {
public:
    /// Reads tests/reference/<name>. @throws std::runtime_error
    explicit reference_table(const std::string& name)
        : value_table(from_file(std::filesystem::path(WELDLOOP_TEST_DATA) / name))
    {
    }
    /// Reads the text of a table; `file` names it in errors. @throws std::runtime_error
    reference_table(const std::string& file, std::string_view content) : value_table(file, content) {}
};

}  // namespace weldloop::test
