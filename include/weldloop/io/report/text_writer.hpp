#pragma once
/// @file
/// A document as plain text, line by line, in ASCII.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

#include <weldloop/core/source.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/text_layout.hpp>

namespace weldloop::detail {

/// Writes titles, marked sentences and lines; no line is wider than it was made for.
class text_writer {
public:
    explicit text_writer(std::size_t width) : width_(width) {}

    void blank() { out_.push_back('\n'); }
    /// A line as it is, cut behind its last letter.
    void line(std::string_view text)
    {
        const std::size_t end = text.find_last_not_of(' ');
        out_.append(text.substr(0, end == std::string_view::npos ? 0 : end + 1)).push_back('\n');
    }
    void say(std::string_view text) { say("", text); }
    /// What is said after a mark or label stays clear of it in every line.
    void say(std::string_view label, std::string_view text)
    {
        std::string before(label);
        for (const std::string& l : broken(plain_ascii(text), width_ - label.size())) {
            line(before + l);
            before.assign(label.size(), ' ');
        }
    }
    void heading(std::string_view text)
    {
        const std::string name = plain_ascii(text);
        std::size_t longest = 0;
        for (const std::string& l : broken(name, width_)) {
            line(l);
            longest = l.size() > longest ? l.size() : longest;
        }
        line(std::string(longest, '='));
    }
    void title(std::string_view text)
    {
        blank();
        for (const std::string& l : broken(plain_ascii(text), width_)) line(l);
        line(std::string(std::min(text.size(), width_), '-'));
    }
    template <class Texts>
    void list(std::string_view heading, std::string_view mark, const Texts& texts)
    {
        title(heading);
        for (const auto& text : texts) say(mark, text);
    }
    void sources(const basis& all)
    {
        title("Sources");
        for (const source* from : all.sources()) say("- ", to_text(*from));
    }
    [[nodiscard]] std::string finished() { return std::move(out_); }

private:
    std::size_t width_;
    std::string out_;
};

}  // namespace weldloop::detail
