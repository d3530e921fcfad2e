#pragma once
/// @file
/// Typed errors. Every public function refuses input that cannot be; the error says which argument, its value, and
/// what is allowed. The ids are stable: programs may test them, messages may be reworded.
///
/// | id  | type                | meaning                                                         |
/// |-----|---------------------|-----------------------------------------------------------------|
/// | 101 | not_finite_error    | an argument is NaN or infinite                                  |
/// | 102 | out_of_range_error  | an argument lies outside what can be                            |
/// | 103 | bad_text_error      | a text cannot be read as the wanted quantity; has a position    |
/// | 104 | missing_data_error  | no published or stated value covers the request                 |
/// | 105 | no_solution_error   | the equations have no solution for the input                    |
/// | 106 | bad_station_error   | a station's path or its parts contradict each other             |
/// | 107 | station_file_error  | a station file cannot be used; has file, line and column        |
/// | 108 | file_write_error    | a report cannot be written; nothing half-written is left behind |

#ifndef __cpp_exceptions
#error "weldloop needs exceptions in the units that include it; units without ask those, which use attempt()"
#endif

#include <cstddef>
#include <stdexcept>
#include <string>
#include <utility>

namespace weldloop {

/// Stable numbers of the error kinds (table above).
enum class error_id : int {
    not_finite = 101,
    out_of_range = 102,
    bad_text = 103,
    missing_data = 104,
    no_solution = 105,
    bad_station = 106,
    station_file = 107,
    file_write = 108,
};

/// Base of every error the library throws on purpose.
class error : public std::runtime_error {
public:
    /// @param id       stable number of the kind
    /// @param argument name of the offending argument
    /// @param value    its value as text, with unit
    /// @param allowed  what would have been accepted
    error(error_id id, std::string argument, std::string value, std::string allowed)
        : std::runtime_error("weldloop " + std::to_string(static_cast<int>(id)) + ": " + argument + " is " + value +
                             "; allowed: " + allowed),
          id_(id), argument_(std::move(argument)), value_(std::move(value)), allowed_(std::move(allowed))
    {
    }

    [[nodiscard]] error_id id() const noexcept { return id_; }  ///< stable number of the kind
    [[nodiscard]] const std::string& argument() const& noexcept
    {
        return argument_;
    }                                                                                ///< name of the offending argument
    [[nodiscard]] const std::string& value() const& noexcept { return value_; }      ///< its value, as text with unit
    [[nodiscard]] const std::string& allowed() const& noexcept { return allowed_; }  ///< what would have been accepted

private:
    error_id id_;
    std::string argument_, value_, allowed_;
};

/// An argument is NaN or infinite.
class not_finite_error : public error {
public:
    /// @param argument name of the argument @param value its value as text
    not_finite_error(std::string argument, std::string value)
        : error(error_id::not_finite, std::move(argument), std::move(value), "a finite number")
    {
    }
};

/// An argument lies outside what can be.
class out_of_range_error : public error {
public:
    /// @param argument name @param value its value as text @param allowed the accepted range
    out_of_range_error(std::string argument, std::string value, std::string allowed)
        : error(error_id::out_of_range, std::move(argument), std::move(value), std::move(allowed))
    {
    }
};

/// A text cannot be read; `position` is the offset of the first character that does not fit, counted from 0.
class bad_text_error : public error {
public:
    /// @param text the whole text @param position offset of the fault @param allowed what was expected there
    bad_text_error(const std::string& text, std::size_t position, std::string allowed)
        : error(error_id::bad_text, "text",
                "\"" + text + "\" (fault at character " + std::to_string(position + 1) + ")", std::move(allowed)),
          position_(position)
    {
    }

    [[nodiscard]] std::size_t position() const noexcept { return position_; }  ///< offset of the fault, from 0

private:
    std::size_t position_;
};

/// No published or stated value covers the request.
class missing_data_error : public error {
public:
    /// @param argument name @param value what was asked for @param allowed what is covered
    missing_data_error(std::string argument, std::string value, std::string allowed)
        : error(error_id::missing_data, std::move(argument), std::move(value), std::move(allowed))
    {
    }
};

/// The equations have no solution for this input, or none was found within the stated bounds.
class no_solution_error : public error {
public:
    /// @param argument what was solved for @param value what was found instead @param allowed where a solution was
    /// sought
    no_solution_error(std::string argument, std::string value, std::string allowed)
        : error(error_id::no_solution, std::move(argument), std::move(value), std::move(allowed))
    {
    }
};

/// A station's path or its parts contradict each other.
class bad_station_error : public error {
public:
    /// @param argument the part or setting @param value what it is @param allowed what a station needs
    bad_station_error(std::string argument, std::string value, std::string allowed)
        : error(error_id::bad_station, std::move(argument), std::move(value), std::move(allowed))
    {
    }
};

}  // namespace weldloop
