#pragma once
/// @file
/// Rating factors as a text to read and as comma-separated values.

#include <cmath>
#include <string>

#include <weldloop/core/number_text.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/report/text_layout.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/rating/lead/factor_table.hpp>

namespace weldloop {

namespace detail {
/// A factor to two decimals, as guides print them.
[[nodiscard]] inline std::string factor_digits(double factor)
{
    std::string out = number_text(std::round(100.0 * factor) / 100.0, factor < 1.0 ? 2 : 3);
    if (out.find('.') == std::string::npos) out.append(".");
    while (out.size() - out.find('.') < 3) out.push_back('0');
    return out;
}
}  // namespace detail

/// Rating factors as a text: what they hold for, then a row for each air and each arrangement.
/// @param t from factor_table_of() @throws as limit_of()
[[nodiscard]] inline std::string factor_text(const factor_table& t)
{
    using detail::left_in;
    using detail::right_in;
    std::string out = to_text(t.lead.size) + ", conductor " + to_text(limit_of(t.lead), "degC") + ", " +
                      to_text(t.duty) + ": " + to_text(t.rated, "A") + " in air of " + to_text(t.base, "degC") + "\n\n";
    out.append(left_in("air", 12)).append(right_in("factor", 9)).append(right_in("guides", 9));
    out.append(right_in("current", 11)).append("\n");
    for (const ambient_row& r : t.ambient)
        out.append(left_in(to_text(r.air, "degC"), 12))
            .append(right_in(detail::factor_digits(r.by_model), 9))
            .append(right_in(detail::factor_digits(r.by_square_root), 9))
            .append(right_in(to_text(r.amps, "A"), 11))
            .append("\n");
    out.append("\n")
        .append(left_in("lying", 16))
        .append(right_in("factor", 9))
        .append(right_in("current", 11))
        .append("\n");
    for (const grouping_row& r : t.grouping)
        out.append(left_in(to_text(r.lay), 16))
            .append(right_in(detail::factor_digits(r.by_model), 9))
            .append(right_in(to_text(r.amps, "A"), 11))
            .append(r.judgement ? "  judgement" : "")
            .append("\n");
    return out;
}

/// The same as comma-separated values with one header row; six significant digits. `kind` is `ambient` or `grouping`;
/// cells that a kind does not have are empty.
/// @param t from factor_table_of() @throws as limit_of()
[[nodiscard]] inline std::string factor_csv(const factor_table& t)
{
    const std::string holds_for = to_text(t.lead.size) + "," + number_text(limit_of(t.lead).in_celsius(), 6) + "," +
                                  number_text(number_in(t.duty.on(), "s"), 6) + "," +
                                  number_text(number_in(t.duty.period(), "s"), 6) + ",";
    std::string out = "kind,size,limit_degC,on_s,period_s,air_degC,lay,factor,square_root_factor,current_A,judgement\n";
    for (const ambient_row& r : t.ambient)
        out.append("ambient,")
            .append(holds_for)
            .append(number_text(r.air.in_celsius(), 6))
            .append(",,")
            .append(number_text(r.by_model, 6))
            .append(",")
            .append(number_text(r.by_square_root, 6))
            .append(",")
            .append(number_text(r.amps.value(), 6))
            .append(",no\n");
    for (const grouping_row& r : t.grouping)
        out.append("grouping,")
            .append(holds_for)
            .append(number_text(t.base.in_celsius(), 6))
            .append(",")
            .append(to_text(r.lay))
            .append(",")
            .append(number_text(r.by_model, 6))
            .append(",,")
            .append(number_text(r.amps.value(), 6))
            .append(r.judgement ? ",yes\n" : ",no\n");
    return out;
}

}  // namespace weldloop
