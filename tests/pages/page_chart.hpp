#pragma once
/// @file
/// Charts of the theory pages: what was published beside what the library computes, drawn by its own writer of SVG, and
/// the caption below them, whose numbers the tests write.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/number_text.hpp>
#include <weldloop/io/draw/standalone_drawing.hpp>
#include <weldloop/io/draw/svg.hpp>

namespace weldloop::test {

using points = std::vector<std::pair<double, double>>;

/// A scale of a chart.
struct chart_scale {
    std::string label;
    double least, most;
    bool logarithmic = false;
};

/// Signs of published values, which differ by shape.
enum class dot { filled, ring, square, cross };

/// A chart narrow enough to be read on a telephone. Its words stand below it, behind the sign they speak of.
class page_chart {
public:
    page_chart(std::string title, chart_scale x, chart_scale y)
        : title_(std::move(title)), x_(std::move(x)), y_(std::move(y))
    {
    }

    /// A curve, drawn where it is within the chart. @param style 0 to 7
    page_chart& curve(const points& p, std::size_t style, const std::string& words)
    {
        const std::string name = "curve" + std::to_string(style);
        drawn_.emplace_back([this, p, name](svg_drawing& d) {
            drawing_path path;
            bool pen = false;
            for (const auto& one : p) {
                const bool in = within(one);
                if (in && pen) path.line(at(one));
                if (in && !pen) path.to(at(one));
                pen = in;
            }
            d.path(path.d(), name);
        });
        return key(words, [name](svg_drawing& d, double y) { d.line({left, y - 4}, {left + key_width, y - 4}, name); });
    }
    /// What lies between two curves of the same abscissas.
    page_chart& between(const points& low, const points& high, const std::string& words)
    {
        drawn_.emplace_back([this, low, high](svg_drawing& d) {
            drawing_path path;
            for (const auto& one : low) {
                if (path.d().empty())
                    path.to(at(one));
                else
                    path.line(at(one));
            }
            for (auto p = high.rbegin(); p != high.rend(); ++p) path.line(at(*p));
            d.path(path.close().d(), "band");
        });
        return key(words, [](svg_drawing& d, double y) { d.rectangle({{left, y - 9}, key_width, 9}, "band"); });
    }
    /// Single values.
    page_chart& dots(const points& p, dot sign, const std::string& words)
    {
        for (const auto& one : p) EXPECT_TRUE(within(one)) << title_ << ": " << one.first << ", " << one.second;
        drawn_.emplace_back([this, p, sign](svg_drawing& d) {
            for (const auto& one : p) mark(d, at(one), sign);
        });
        return key(words, [sign](svg_drawing& d, double y) { mark(d, {left + 0.5 * key_width, y - 4}, sign); });
    }
    /// From one ordinate to another.
    page_chart& whisker(double x, double low, double high)
    {
        drawn_.emplace_back([this, x, low, high](svg_drawing& d) { d.line(at({x, low}), at({x, high}), "whisker"); });
        return *this;
    }
    /// A dashed level.
    page_chart& level(double y, const std::string& words)
    {
        drawn_.emplace_back([this, y](svg_drawing& d) { d.line(at({x_.least, y}), at({x_.most, y}), "limit"); });
        return key(words, [](svg_drawing& d, double at) {
            d.line({left, at - 4}, {left + key_width, at - 4}, "limit");
        });
    }
    /// An end of a range of validity: an upright line that is named beside it.
    page_chart& edge(double x, const std::string& words, bool to_the_left = false)
    {
        drawn_.emplace_back([this, x, words, to_the_left](svg_drawing& d) {
            const double lowest = y_.least, highest = y_.most;
            d.line(at({x, lowest}), at({x, highest}), "end-mark");
            const drawing_point above = at({x, highest});
            d.text({above.x + (to_the_left ? -5 : 5), above.y + 12}, words,
                   to_the_left ? "small halo end" : "small halo");
        });
        return *this;
    }

    /// The picture as a file.
    [[nodiscard]] std::string finished() const
    {
        const double key_height = 19.0;
        svg_drawing d(width, bottom + 50.0 + key_height * static_cast<double>(keys_.size()), title_, title_);
        for (const double v : ticks(y_)) {
            d.line({left, on_y(v)}, {right, on_y(v)}, "grid");
            d.text({left - 6, on_y(v) + 4}, tick_text(v), "end small soft");
        }
        for (const double v : ticks(x_)) {
            d.line({on_x(v), bottom}, {on_x(v), bottom + 5}, "axis");
            d.text({on_x(v), bottom + 18}, tick_text(v), "middle small soft");
        }
        d.line({left, bottom}, {right, bottom}, "axis");
        d.text({0.5 * (left + right), bottom + 36}, x_.label, "middle small soft");
        d.text({4, top - 12}, y_.label, "small soft");
        for (const auto& draw : drawn_) draw(d);
        double y = bottom + 60;
        for (const auto& one : keys_) {
            one.sign(d, y);
            d.text({left + key_width + 8, y}, one.words, "small");
            y += key_height;
        }
        return standalone_drawing(d.finished());
    }

private:
    static constexpr double width = 380, left = 46, right = 362, top = 30, bottom = 250, key_width = 28;

    struct key_line {
        std::string words;
        std::function<void(svg_drawing&, double)> sign;
    };

    page_chart& key(const std::string& words, std::function<void(svg_drawing&, double)> sign)
    {
        constexpr std::size_t most_letters = 50;  // to the right edge
        EXPECT_LE(words.size(), most_letters) << words;
        if (!words.empty()) keys_.push_back({words, std::move(sign)});
        return *this;
    }
    static void mark(svg_drawing& d, drawing_point at, dot sign)
    {
        constexpr double radius = 3.4;
        switch (sign) {
        case dot::filled: d.circle(at, radius, "dot"); break;
        case dot::ring: d.circle(at, radius, "frame"); break;
        case dot::square: d.rectangle({{at.x - radius, at.y - radius}, 2 * radius, 2 * radius}, "sum"); break;
        case dot::cross:
            d.path(drawing_path()
                       .to({at.x - radius, at.y - radius})
                       .line({at.x + radius, at.y + radius})
                       .to({at.x - radius, at.y + radius})
                       .line({at.x + radius, at.y - radius})
                       .d(),
                   "whisker");
        }
    }
    static double share(const chart_scale& s, double v)
    {
        return s.logarithmic ? std::log(v / s.least) / std::log(s.most / s.least) : (v - s.least) / (s.most - s.least);
    }
    static bool within(const chart_scale& s, double v)
    {
        constexpr double rounding = 1e-9;
        return (!s.logarithmic || v > 0.0) && share(s, v) >= -rounding && share(s, v) <= 1.0 + rounding;
    }
    [[nodiscard]] bool within(const std::pair<double, double>& p) const
    {
        return within(x_, p.first) && within(y_, p.second);
    }
    [[nodiscard]] double on_x(double v) const { return left + (right - left) * share(x_, v); }
    [[nodiscard]] double on_y(double v) const { return bottom - (bottom - top) * share(y_, v); }
    [[nodiscard]] drawing_point at(const std::pair<double, double>& p) const { return {on_x(p.first), on_y(p.second)}; }

    // "1e6" where the digits would not fit
    static std::string tick_text(double v)
    {
        constexpr double too_long = 99999.0;
        return v > too_long ? "1e" + number_text(std::round(std::log10(v))) : number_text(v, 6);
    }
    static std::vector<double> ticks(const chart_scale& s)
    {
        std::vector<double> out;
        if (s.logarithmic) {
            const double decades = std::log10(s.most / s.least);
            for (double k = std::floor(std::log10(s.least)); k <= std::log10(s.most) + 1e-9; k += decades > 8 ? 2 : 1)
                for (const double m : {1.0, 2.0, 5.0}) {
                    const double v = m * std::pow(10.0, k);
                    if (within(s, v) && (m == 1.0 || decades <= 2.5)) out.push_back(v);
                }
            return out;
        }
        const double step = round_step(s.most - s.least, 7);
        for (double k = std::ceil(s.least / step - 1e-9); k * step <= s.most + 1e-9 * step; k += 1.0)
            out.push_back(k * step);
        return out;
    }

    std::string title_;
    chart_scale x_, y_;
    std::vector<std::function<void(svg_drawing&)>> drawn_;
    std::vector<key_line> keys_;
};

/// Size and sign of errors, in percent as given.
struct error_words {
    double median = 0.0, worst = 0.0;  ///< size; the largest with its sign
    /// @param y the ordinates of these
    explicit error_words(const points& y)
    {
        std::vector<double> sizes;
        for (const auto& p : y) {
            sizes.push_back(std::fabs(p.second));
            if (std::fabs(p.second) > std::fabs(worst)) worst = p.second;
        }
        std::sort(sizes.begin(), sizes.end());
        if (!sizes.empty()) median = sizes[sizes.size() / 2];
    }
    /// "median 0.01 %, worst -0.084 %"
    [[nodiscard]] std::string text(const std::string& unit = "%") const
    {
        return "median " + number_text(median, 2) + " " + unit + ", worst " + number_text(worst, 2) + " " + unit;
    }
};

namespace files {
inline std::string read(const std::filesystem::path& file)
{
    std::ifstream in(file, std::ios::binary);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}
// Numbers of tags apart from all else: another compiler's last digit may move a line by a hundredth of a unit.
inline std::pair<std::string, std::vector<double>> taken_apart(const std::string& svg)
{
    std::pair<std::string, std::vector<double>> out;
    bool in_tag = false;
    for (std::size_t i = 0; i < svg.size();) {
        if (svg[i] == '<') in_tag = true;
        if (svg[i] == '>') in_tag = false;
        const bool number = in_tag && (svg[i] == '-' || (svg[i] >= '0' && svg[i] <= '9'));
        if (!number) {
            out.first += svg[i++];
            continue;
        }
        char* end = nullptr;
        out.second.push_back(std::strtod(svg.c_str() + i, &end));
        const auto used = static_cast<std::size_t>(end - (svg.c_str() + i));
        if (used == 0) out.first += svg[i];
        i += std::max<std::size_t>(used, 1);
    }
    return out;
}
}  // namespace files

/// The page docs/pages/PAGE shows docs/pictures/FILE with this caption in the paragraph below it. Both are written anew
/// with WELDLOOP_WRITE_PICTURES=1.
inline void expect_on_page(const std::string& page, const std::string& file, const page_chart& chart,
                           const std::string& caption)
{
    constexpr double same_place = 0.1;  // drawing units
    const std::filesystem::path docs = std::filesystem::path(WELDLOOP_INCLUDE_DIR).parent_path() / "docs";
    const std::string svg = chart.finished(), mark = "\\image html " + file + "\n\n";
    std::string text = files::read(docs / "pages" / page);
    std::size_t at = text.find(mark);
    ASSERT_NE(at, std::string::npos) << page << " does not show " << file;
    at += mark.size();
    const std::size_t end = text.find("\n\n", at);
    ASSERT_NE(end, std::string::npos) << page << ": no paragraph below " << file;
    if (std::getenv("WELDLOOP_WRITE_PICTURES") != nullptr) {
        std::ofstream(docs / "pictures" / file, std::ios::binary) << svg;
        text.replace(at, end - at, caption);
        std::ofstream(docs / "pages" / page, std::ios::binary) << text;
        return;
    }
    EXPECT_EQ(text.substr(at, end - at), caption) << page;
    const auto kept = files::taken_apart(files::read(docs / "pictures" / file)), drawn = files::taken_apart(svg);
    EXPECT_EQ(kept.first, drawn.first) << file;
    ASSERT_EQ(kept.second.size(), drawn.second.size()) << file;
    for (std::size_t i = 0; i < kept.second.size(); ++i)
        EXPECT_NEAR(kept.second[i], drawn.second[i], same_place) << file << ", number " << i;
}

}  // namespace weldloop::test
