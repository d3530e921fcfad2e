#pragma once
/// @file
/// A check of markup, as strict as the writers under test need: tags balance, attributes are quoted, every mark in a
/// text is an escape.

#include <algorithm>
#include <array>
#include <cctype>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace weldloop::test {

/// What is wrong with a markup text, empty if nothing; texts and tag names are kept for further checks.
class markup_checker {
public:
    explicit markup_checker(std::string_view text) : text_(text)
    {
        while (fault_.empty() && at_ < text_.size()) {
            if (text_[at_] == '<')
                tag();
            else
                content();
        }
        if (fault_.empty() && !open_.empty()) fail("<" + open_.back() + "> is not closed");
    }

    [[nodiscard]] const std::string& fault() const { return fault_; }
    [[nodiscard]] const std::vector<std::string>& tags() const { return tags_; }
    [[nodiscard]] bool has(std::string_view tag) const
    {
        return std::find(tags_.begin(), tags_.end(), tag) != tags_.end();
    }
    [[nodiscard]] const std::vector<std::string>& attributes() const { return attributes_; }

private:
    static constexpr std::array<std::string_view, 1> void_elements{"meta"};

    void fail(const std::string& what)
    {
        fault_ = what + " at offset " + std::to_string(at_) + ": " + std::string(text_.substr(at_, 60));
    }

    void content()
    {
        const std::size_t end = std::min(text_.find('<', at_), text_.size());
        check_text(text_.substr(at_, end - at_));
        at_ = end;
    }
    void check_text(std::string_view piece)
    {
        for (std::size_t i = 0; i < piece.size(); ++i) {
            const char c = piece[i];
            if (c == '>' || (static_cast<unsigned char>(c) < 0x20U && c != '\n'))
                return fail("a bare mark or control character");
            if (c != '&') continue;
            const std::string_view rest = piece.substr(i);
            const auto is = [&](std::string_view name) { return rest.starts_with(name); };
            if (!is("&amp;") && !is("&lt;") && !is("&gt;") && !is("&quot;") && !is("&#39;"))
                return fail("an unknown escape");
        }
    }
    void tag()
    {
        if (text_.substr(at_).starts_with("<!DOCTYPE html>")) {
            at_ += 15;
            return;
        }
        const bool closes = text_.substr(at_ + 1, 1) == "/";
        std::size_t i = at_ + (closes ? 2 : 1);
        const std::size_t name_at = i;
        while (i < text_.size() && (std::isalnum(static_cast<unsigned char>(text_[i])) != 0)) ++i;
        const std::string name(text_.substr(name_at, i - name_at));
        if (name.empty()) return fail("no name of a tag");
        bool closed = false;
        while (i < text_.size() && text_[i] != '>') {
            if (text_[i] == '/' && text_.substr(i, 2) == "/>") {
                closed = true;
                ++i;
                continue;
            }
            if (text_[i] != ' ') return fail("a bare word in <" + name + ">");
            const std::size_t equals = text_.find("=\"", i);
            const std::size_t end = equals == std::string_view::npos ? equals : text_.find('"', equals + 2);
            if (end == std::string_view::npos) return fail("an attribute without quotes in <" + name + ">");
            const std::string_view key = text_.substr(i + 1, equals - i - 1),
                                   value = text_.substr(equals + 2, end - equals - 2);
            if (key.find_first_of(" <>&'") != std::string_view::npos || value.find('<') != std::string_view::npos)
                return fail("a bad attribute of <" + name + ">");
            check_text(value);
            attributes_.emplace_back(key);
            i = end + 1;
        }
        at_ = i + 1;
        if (closes) {
            if (open_.empty() || open_.back() != name) return fail("</" + name + "> closes nothing");
            open_.pop_back();
            return;
        }
        tags_.push_back(name);
        if (name == "style") at_ = text_.find("</style>", at_);
        if (!closed && std::find(void_elements.begin(), void_elements.end(), name) == void_elements.end())
            open_.push_back(name);
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::vector<std::string> open_, tags_, attributes_;
    std::string fault_;
};

}  // namespace weldloop::test
