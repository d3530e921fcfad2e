#pragma once
/// @file
/// Formulas as the published tables print them, such as "Nu = 0.53*Ra^(1/4)", evaluated as they stand: what the library
/// computes is then held against the print and not against a second typing of it.

#include <cmath>
#include <cstddef>
#include <map>
#include <numbers>
#include <stdexcept>
#include <string>
#include <string_view>

#include <weldloop/core/number_chars.hpp>

namespace weldloop::test {

/// Values of the symbols in a formula.
using formula_symbols = std::map<std::string, double, std::less<>>;

/// Reads sums, products (also by juxtaposition, "8 pi f"), quotients, powers, brackets, sqrt, exp and ln.
class printed_formula {
public:
    printed_formula(std::string_view text, const formula_symbols& symbols)
        : whole_(text), rest_(text), symbols_(symbols)
    {
        if (const std::size_t equals = rest_.find('='); equals != std::string_view::npos)
            rest_.remove_prefix(equals + 1);
    }

    /// @throws std::runtime_error for what cannot be read, or a symbol without a value
    double value()
    {
        const double out = sum();
        if (!at_end()) fail();
        return out;
    }

private:
    [[noreturn]] void fail() const
    {
        throw std::runtime_error("cannot read '" + std::string(whole_) + "' from '" + std::string(rest_) + "'");
    }
    static bool is_digit(char c) { return c >= '0' && c <= '9'; }
    static bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }

    bool at_end()
    {
        while (rest_.starts_with(' ')) rest_.remove_prefix(1);
        return rest_.empty();
    }
    bool take(char c)
    {
        if (at_end() || rest_.front() != c) return false;
        rest_.remove_prefix(1);
        return true;
    }

    double sum()
    {
        double out = product();
        for (;;) {
            if (take('+'))
                out += product();
            else if (take('-'))
                out -= product();
            else
                return out;
        }
    }
    double product()
    {
        double out = with_sign();
        for (;;) {
            if (take('*'))
                out *= with_sign();
            else if (take('/'))
                out /= with_sign();
            else if (!at_end() && (is_digit(rest_.front()) || is_letter(rest_.front()) || rest_.front() == '('))
                out *= power();
            else
                return out;
        }
    }
    double with_sign() { return take('-') ? -with_sign() : power(); }
    double power()
    {
        const double base = atom();
        return take('^') ? std::pow(base, with_sign()) : base;
    }
    double bracket()
    {
        const double out = sum();
        if (!take(')')) fail();
        return out;
    }
    double atom()
    {
        if (take('(')) return bracket();
        if (at_end()) fail();
        if (is_digit(rest_.front())) {
            const auto front = detail::number_at_front(rest_);
            if (!front.value) fail();
            rest_.remove_prefix(front.used);
            return *front.value;
        }
        std::size_t end = 0;
        while (end < rest_.size() && (is_letter(rest_[end]) || is_digit(rest_[end]))) ++end;
        const std::string_view name = rest_.substr(0, end);
        if (name.empty()) fail();
        if (const auto found = symbols_.find(name); found != symbols_.end()) {
            rest_.remove_prefix(end);
            return found->second;
        }
        const bool is_function = name == "sqrt" || name == "exp" || name == "ln";
        if (!is_function && name != "pi") fail();
        rest_.remove_prefix(end);
        if (!is_function) return std::numbers::pi;
        if (!take('(')) fail();
        const double argument = bracket();
        return name == "sqrt" ? std::sqrt(argument) : name == "exp" ? std::exp(argument) : std::log(argument);
    }

    std::string_view whole_, rest_;
    const formula_symbols& symbols_;
};

/// What a printed formula gives for the values of its symbols. @throws std::runtime_error
inline double printed_value(std::string_view formula, const formula_symbols& symbols = {})
{
    return printed_formula(formula, symbols).value();
}

/// The part of a text after one mark and before another, each found from the left. @throws std::runtime_error
inline std::string text_between(const std::string& text, std::string_view after, std::string_view before)
{
    const std::size_t mark = text.find(after);
    if (mark == std::string::npos) throw std::runtime_error("no '" + std::string(after) + "' in '" + text + "'");
    const std::size_t from = mark + after.size();
    const std::size_t to = before.empty() ? text.size() : text.find(before, from);
    if (to == std::string::npos) throw std::runtime_error("no '" + std::string(before) + "' in '" + text + "'");
    return text.substr(from, to - from);
}

}  // namespace weldloop::test
