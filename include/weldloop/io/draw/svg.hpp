#pragma once
/// @file
/// A small writer of SVG drawings: the same calls give the same text, and every text is escaped.

#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_chars.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/io/report/escape.hpp>

namespace weldloop {

/// A point of a drawing, in its own units; y points down.
struct drawing_point {
    double x = 0.0;  ///< [px] from the left edge
    double y = 0.0;  ///< [px] from the upper edge
};

/// A rectangle on it.
struct drawing_box {
    drawing_point at;     ///< upper left corner
    double width = 0.0;   ///< [px]
    double height = 0.0;  ///< [px]
};

/// A drawing under construction. Looks come from classes, so that one style sheet serves light, dark and print.
class svg_drawing {
public:
    /// @param width       [px], any @param height [px], any
    /// @param title       what the drawing shows, read out in its place
    /// @param description the same at more length
    /// @throws not_finite_error
    svg_drawing(double width, double height, std::string_view title, std::string_view description)
    {
        out_.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" role=\"img\" viewBox=\"0 0 ");
        out_.append(number(width)).append(" ").append(number(height)).append("\" width=\"").append(number(width));
        out_.append("\" height=\"")
            .append(number(height))
            .append("\" aria-label=\"")
            .append(markup_escaped(title))
            .append("\">\n");
        out_.append("<title>").append(markup_escaped(title)).append("</title>\n");
        out_.append("<desc>").append(markup_escaped(description)).append("</desc>\n");
    }

    /// A straight line of a class. @throws not_finite_error
    svg_drawing& line(drawing_point a, drawing_point b, std::string_view classes)
    {
        return element("line", pair("x1", a.x) + pair("y1", a.y) + pair("x2", b.x) + pair("y2", b.y), classes);
    }
    /// A rectangle with its upper left corner and the radius of its corners. @param box where @param classes its looks
    /// @param corner [px], any; square from 0 down @throws not_finite_error
    svg_drawing& rectangle(const drawing_box& box, std::string_view classes, double corner = 0.0)
    {
        return element("rect",
                       pair("x", box.at.x) + pair("y", box.at.y) + pair("width", box.width) +
                           pair("height", box.height) + (corner > 0.0 ? pair("rx", corner) : ""),
                       classes);
    }
    /// A circle. @param centre of it @param radius [px], any @param classes its looks @throws not_finite_error
    svg_drawing& circle(drawing_point centre, double radius, std::string_view classes)
    {
        return element("circle", pair("cx", centre.x) + pair("cy", centre.y) + pair("r", radius), classes);
    }
    /// A path; `d` is made of numbers and letters by the caller, see drawing_path.
    svg_drawing& path(std::string_view d, std::string_view classes)
    {
        return element("path", " d=\"" + markup_escaped(d) + "\"", classes);
    }
    /// A text of one line; `classes` say its size and where its anchor is. @throws not_finite_error
    svg_drawing& text(drawing_point at, std::string_view content, std::string_view classes)
    {
        out_.append("<text").append(pair("x", at.x)).append(pair("y", at.y)).append(class_of(classes)).append(">");
        out_.append(markup_escaped(content)).append("</text>\n");
        return *this;
    }
    /// Opens a group with a text that is shown when the pointer rests on it.
    svg_drawing& begin_group(std::string_view classes, std::string_view tip = {})
    {
        out_.append("<g").append(class_of(classes)).append(">");
        if (!tip.empty()) out_.append("<title>").append(markup_escaped(tip)).append("</title>");
        out_.append("\n");
        return *this;
    }
    /// Closes the group opened last.
    svg_drawing& end_group()
    {
        out_.append("</g>\n");
        return *this;
    }

    /// The finished drawing.
    [[nodiscard]] std::string finished() const { return out_ + "</svg>\n"; }

    /// A coordinate with two decimals. @param value [px], any @throws not_finite_error
    [[nodiscard]] static std::string number(double value)
    {
        if (!std::isfinite(value)) throw not_finite_error("drawing coordinate", number_text(value));
        std::string out = detail::number_chars(value, detail::notation::fixed, 2);
        while (out.back() == '0') out.pop_back();
        if (out.back() == '.') out.pop_back();
        return out == "-0" ? "0" : out;
    }

private:
    static std::string pair(std::string_view name, double value)
    {
        return " " + std::string(name) + "=\"" + number(value) + "\"";
    }
    static std::string class_of(std::string_view classes)
    {
        return classes.empty() ? "" : " class=\"" + markup_escaped(classes) + "\"";
    }
    svg_drawing& element(std::string_view tag, const std::string& attributes, std::string_view classes)
    {
        out_.append("<").append(tag).append(attributes).append(class_of(classes)).append("/>\n");
        return *this;
    }

    std::string out_;
};

/// The `d` of a path, step by step.
class drawing_path {
public:
    /// Goes to a point without drawing. @throws not_finite_error
    drawing_path& to(drawing_point p) { return step('M', p); }
    /// Draws a straight line to a point. @throws not_finite_error
    drawing_path& line(drawing_point p) { return step('L', p); }
    /// Draws a curve bent towards a point. @throws not_finite_error
    drawing_path& curve(drawing_point bend, drawing_point p)
    {
        step('Q', bend);
        d_.append(" ").append(svg_drawing::number(p.x)).append(" ").append(svg_drawing::number(p.y));
        return *this;
    }
    /// Draws a line back to where the figure began.
    drawing_path& close()
    {
        d_.append("Z");
        return *this;
    }
    /// The finished text.
    [[nodiscard]] const std::string& d() const& { return d_; }

private:
    drawing_path& step(char letter, drawing_point p)
    {
        d_.append(d_.empty() ? "" : " ").push_back(letter);
        d_.append(svg_drawing::number(p.x)).append(" ").append(svg_drawing::number(p.y));
        return *this;
    }
    std::string d_;
};

/// A scale of a chart: values from `least` to `most` on a way of the drawing.
struct drawing_scale {
    double least = 0.0;  ///< value at `from` [unit of the values]
    double most = 1.0;   ///< value at `to` [unit of the values]
    double from = 0.0;   ///< [px] coordinate
    double to = 1.0;     ///< [px] coordinate

    /// The coordinate of a value [px]. @param value [unit of the values], any
    [[nodiscard]] double at(double value) const { return from + (to - from) * (value - least) / (most - least); }
};

/// A step of 1, 2 or 5 times a power of ten that divides a span into at most `most_steps`
/// [unit of the span]. @param span [its unit], above 0 @param most_steps 1 or more @throws out_of_range_error
[[nodiscard]] inline double round_step(double span, int most_steps)
{
    if (!(span > 0.0) || !std::isfinite(span))
        throw out_of_range_error("span of a chart", number_text(span), "above zero");
    const double rough = span / most_steps;
    const double decade = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double m : {1.0, 2.0, 5.0})
        if (m * decade >= rough * (1.0 - 1e-12)) return m * decade;
    return 10.0 * decade;
}

}  // namespace weldloop
