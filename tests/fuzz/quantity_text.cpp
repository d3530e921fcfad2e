// Quantities, temperatures, shares, sizes and words of the trade, of any bytes: read as a finite value that its own
// text gives back, or refused with a position inside of the text.
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/nearest_word.hpp>
#include <weldloop/core/parse.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/core/trade_words.hpp>
#include <weldloop/core/unit_text.hpp>

#include "property.hpp"

namespace wl = weldloop;

namespace {

double number_of(wl::temperature t)
{
    return t.in_kelvin();
}
double number_of(const wl::conductor_size& s)
{
    return s.area().value();
}
template <class Rule>
double number_of(wl::bounded_number<Rule> x)
{
    return static_cast<double>(x);
}
template <class Q>
double number_of(const Q& q)
{
    return q.value();
}

template <class T>
void hold_for(std::string_view text)
{
    try {
        const T read = wl::parse<T>(text);
        fuzz::hold(std::isfinite(number_of(read)), "what was read is finite", text);
        // what stands around it does not matter, twice the same is the same
        fuzz::hold(number_of(wl::parse<T>(" " + std::string(text) + " ")) == number_of(read), "spaces do not matter",
                   text);
    } catch (const wl::bad_text_error& e) {
        fuzz::hold(e.position() <= text.size(), "the position stands in the text", text);
    } catch (const wl::error& e) {
        fuzz::hold(e.id() == wl::error_id::out_of_range || e.id() == wl::error_id::not_finite,
                   "only what cannot be is refused otherwise", text);
    }
}

void hold_for_size(std::string_view text)
{
    hold_for<wl::conductor_size>(text);
    try {
        const wl::conductor_size size = wl::parse<wl::conductor_size>(text);
        const double again = wl::parse<wl::conductor_size>(wl::to_text(size)).area().value();
        fuzz::hold(std::fabs(again / size.area().value() - 1.0) < 1e-5, "a size's text gives it back",
                   text);  // 6 digits
    } catch (const wl::bad_text_error&) {
    } catch (const wl::out_of_range_error&) {
    }
}

}  // namespace

namespace {

void hold_for_words(std::string_view text)
{
    constexpr std::array<std::string_view, 5> words{"gmaw", "work clamp", "lbf ft", "degC", "current"};
    const std::string_view meant = wl::trade_meaning(text, words), near = wl::near_word(text, words);
    for (const std::string_view found : {meant, near}) {
        bool known = found.empty();
        for (const std::string_view w : words) known = known || w == found;
        fuzz::hold(known, "a word that is offered is one of the list", text);
    }
}

// What a text is read as: the first character says which, one for each execution, so that there can be many.
constexpr std::array<void (*)(std::string_view), 9> readings{hold_for<wl::current>,
                                                             hold_for<wl::length>,
                                                             hold_for<wl::temperature_difference>,
                                                             hold_for<wl::torque>,
                                                             hold_for<wl::temperature>,
                                                             hold_for<wl::duty_fraction>,
                                                             hold_for<wl::fraction>,
                                                             hold_for_size,
                                                             hold_for_words};

constexpr std::size_t longest_text = 96;  // bytes behind the first: words are compared over their first 64

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size == 0 || size > 1 + longest_text) return 0;
    readings[data[0] % readings.size()](std::string(data + 1, data + size));
    return 0;
}
