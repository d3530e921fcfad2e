#pragma once
/// @file
/// A page of HTML that needs nothing from elsewhere, piece by piece.

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

#include <weldloop/core/source.hpp>
#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/page_style.hpp>

namespace weldloop::detail {

/// Writes a page: head and looks first, at the end what it is and is not.
class page_writer {
public:
    /// @param title of the page and its first heading @param more_style rules beside those of every page
    page_writer(std::string_view title, std::string_view more_style)
    {
        put("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
            "content=\"width=device-width, initial-scale=1\">\n<title>")
            .say(title)
            .put("</title>\n<style>")
            .put(drawing_style)
            .put(page_style)
            .put(more_style)
            .put("</style>\n</head>\n<body>\n<header>\n");
        element("h1", title);
    }

    /// Writes marks of the page.
    page_writer& put(std::string_view marks)
    {
        out_.append(marks);
        return *this;
    }
    /// Writes text, escaped.
    page_writer& say(std::string_view text)
    {
        out_.append(markup_escaped(text));
        return *this;
    }
    page_writer& element(std::string_view tag, std::string_view text)
    {
        return put("<").put(tag).put(">").say(text).put("</").put(tag.substr(0, tag.find(' '))).put(">\n");
    }
    /// Label and text of a list of conditions.
    void condition(std::string_view label, std::string_view text)
    {
        element("dt", label);
        element("dd", text);
    }
    void begin_main() { put("</header>\n<main>\n"); }
    void figure(std::string_view title, std::string_view svg, std::string_view caption)
    {
        element("h2", title);
        put("<figure>\n<div class=\"scroll\" tabindex=\"0\">\n").put(svg).put("</div>\n");
        element("figcaption", caption);
        put("</figure>\n");
    }
    /// A heading of a column of a table, and its classes.
    struct column {
        std::string_view heading, classes;
    };
    /// Begins a table that on a narrow screen tells each row as a list: its head, up to its body.
    /// @param classes of the table, or empty @param columns of it
    void begin_told(std::string_view classes, std::initializer_list<column> columns)
    {
        put("<div class=\"scroll\" tabindex=\"0\">\n<table role=\"table\" class=\"told");
        if (!classes.empty()) put(" ").put(classes);
        put("\">\n<thead role=\"rowgroup\"><tr role=\"row\">");
        for (const column& c : columns) {
            put("<th role=\"columnheader\" scope=\"col\"");
            if (!c.classes.empty()) put(" class=\"").put(c.classes).put("\"");
            put(">").say(c.heading).put("</th>");
        }
        put("</tr></thead>\n<tbody role=\"rowgroup\">\n");
    }
    /// A cell of such a table. @param heading of its column @param text escaped @param classes or empty
    page_writer& told(std::string_view heading, std::string_view text, std::string_view classes)
    {
        put("<td role=\"cell\" data-is=\"").put(heading).put("\"");
        if (!classes.empty()) put(" class=\"").put(classes).put("\"");
        return put(">").say(text).put("</td>");
    }
    /// A box of cautions under two headings, each with its texts.
    template <class First, class Second>
    void cautions(std::string_view heading, const First& texts, std::string_view heading_2, const Second& texts_2)
    {
        put("<section class=\"cautions\" aria-labelledby=\"cautions\">\n<h2 id=\"cautions\">").say(heading);
        put("</h2>\n<ul>\n");
        for (const auto& text : texts) element("li", text);
        put("</ul>\n");
        element("h2", heading_2);
        put("<ul>\n");
        for (const auto& text : texts_2) element("li", text);
        put("</ul>\n</section>\n");
    }
    void sources(const basis& all)
    {
        element("h2", "Sources");
        put("<ul class=\"sources\">\n");
        for (const source* from : all.sources()) element("li", to_text(*from));
        put("</ul>\n");
    }
    [[nodiscard]] std::string finished(std::string_view standing)
    {
        put("</main>\n<footer>\n");
        element("p", standing);
        put("</footer>\n</body>\n</html>\n");
        return std::move(out_);
    }

private:
    std::string out_;
};

}  // namespace weldloop::detail
