#pragma once
// What the comments of public names leave out: the unit of a plain number, the range of an argument, what a function
// refuses through those it calls, the source of a law. Read from the text of the headers; the words that count are
// those of DEVELOPERS.md.

#include <algorithm>
#include <cctype>
#include <cstddef>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "house/declared_functions.hpp"
#include "house/header_tree.hpp"

namespace house {

using words = std::set<std::string>;

/// Whether a word stands in a text, not as part of another.
inline bool has_word(const std::string& text, const std::string& word)
{
    const auto of_word = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; };
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
        const std::size_t end = at + word.size();
        if ((at == 0 || !of_word(text[at - 1])) && (end == text.size() || !of_word(text[end]))) return true;
    }
    return false;
}

/// A unit in brackets, [1] too, or a word for a number that has none: in what is said of it, or last in its name.
inline bool names_unit(const std::string& said, const std::string& name = {})
{
    static const std::string none =
        "(share|ratio|factor|multiplier|exponent|number|count|turn|per cent|probability|dimensionless)s?";
    static const std::regex unit(R"(\[[^\]]+\]|\b)" + none + R"(\b)", std::regex::icase), last("(^|.*[_:])" + none);
    return std::regex_search(said, unit) || std::regex_match(name, last);
}

/// Words for a range: ends, "any", or the function that says it, "as in x()".
inline bool names_range(const std::string& text, const words& functions)
{
    static const std::regex as(R"(\bas in (\w+)\()");
    std::smatch other;
    if (std::regex_search(text, other, as)) return functions.contains(other[1]);
    static const std::regex range(
        R"(\b(above|below|up to|at least|at most|or more|or less|any|not negative|within|(under|over) (?=\d))\b)"
        R"(|\d[^ ,;]*( [%\w]+){0,2} to (above |below |under )?\S)",
        std::regex::icase);
    return std::regex_search(text, range);
}

/// The type of a parameter and its name: everything before its last word, the default left out. An argument
/// without a name has none.
inline std::pair<std::string, std::string> type_and_name(const std::string& parameter)
{
    std::istringstream in(parameter.substr(0, parameter.find(" =")));
    std::vector<std::string> tokens;
    for (std::string t; in >> t;) tokens.push_back(t);
    std::string type, name;
    if (tokens.size() > 1 && tokens[tokens.size() - 2] != "::" && tokens[tokens.size() - 2] != "const" &&
        (std::isalpha(static_cast<unsigned char>(tokens.back()[0])) != 0)) {
        name = tokens.back();
        tokens.pop_back();
    }
    for (const std::string& t : tokens) type += (type.empty() ? "" : " ") + t;
    return {type, name};
}

/// What a comment says of a parameter: from its @param to the next command or the end of the paragraph, otherwise the
/// sentences that name it in backticks.
inline std::string said_of(const std::string& comment, const std::string& name)
{
    static const std::regex next(R"(@[a-z]\w*|\n[ \t]*\n)");
    const std::regex param(R"(@param(\[\w+\])?\s+)" + name + R"(\b)");
    std::smatch head;
    if (std::regex_search(comment, head, param)) {
        const std::string rest = head.suffix();
        std::smatch end;
        return std::regex_search(rest, end, next) ? end.prefix().str() : rest;
    }
    std::string said;
    std::string sentence;
    for (std::size_t i = 0; i < comment.size(); ++i) {
        sentence += comment[i];
        const bool ends = i + 1 == comment.size() || (comment[i] == '.' && comment[i + 1] <= ' ');
        if (!ends) continue;
        if (sentence.find('`' + name + '`') != std::string::npos) said += sentence;
        sentence.clear();
    }
    return said;
}

inline std::string one_line(std::string text)
{
    std::replace(text.begin(), text.end(), '\n', ' ');
    return std::regex_replace(text, std::regex(" +"), " ");
}

/// The comment without what it says of parameters.
inline std::string said_of_answer(const std::string& comment)
{
    std::string out;
    std::size_t from = 0;
    static const std::regex head(R"(@t?param\b)"), next(R"(@[a-z]\w*|\n[ \t]*\n)");
    for (std::smatch at; from < comment.size();) {
        const std::string rest = comment.substr(from);
        if (!std::regex_search(rest, at, head)) return out + rest;
        out += at.prefix();
        const std::string after = at.suffix();
        std::smatch end;
        if (!std::regex_search(after, end, next)) return out;
        from = comment.size() - after.size() + static_cast<std::size_t>(end.position());
    }
    return out;
}

inline std::string bare_name(const std::string& name)
{
    return name.substr(name.rfind(':') + 1);
}

inline bool takes_function(const std::string& type)
{
    return type.find("function") != std::string::npos;
}

/// Whether a function has a comment that must say all of it. One without has it where it is declared (x.hpp of a
/// x_body.hpp), or Doxygen warns of it.
inline bool must_say(const declared_function& f)
{
    return f.open && !f.comment.empty() && !f.body.ends_with("= default ;") && !f.body.ends_with("= delete ;");
}

/// Names of types that are quantities: aliases of Boost's, or of what quantities make together.
inline words quantities_of(const header_tree& tree)
{
    static const std::regex alias(R"(using (\w+) =\s*(boost::units::quantity<|decltype\())");
    words out;
    for (const auto& [header, content] : tree)
        for (std::sregex_iterator at(content.begin(), content.end(), alias), end; at != end; ++at) out.insert((*at)[1]);
    return out;
}

inline words functions_of(const header_tree& tree)
{
    words out;
    for (const auto& [header, content] : tree)
        for (const declared_function& f : functions_in(content))
            if (f.open) out.insert(bare_name(f.name));
    return out;
}

/// Plain numbers whose unit is not said: parameters, answers, members and constants.
inline std::vector<std::string> without_unit(const declared& what)
{
    std::vector<std::string> out;
    const auto plain = [](const std::string& type) {
        return (has_word(type, "double") || has_word(type, "float")) && !takes_function(type) &&
               type.find("quantity <") == std::string::npos;
    };
    for (const declared_function& f : what.functions) {
        if (!must_say(f)) continue;
        for (const std::string& p : f.parameters) {
            const auto [type, name] = type_and_name(p);
            if (plain(type) && !name.empty() && !names_unit(said_of(f.comment, name), name))
                out.push_back(f.name + "(" + name + ")");
        }
        const bool answers = plain(f.before) || f.name.ends_with("operatordouble");
        if (answers && !names_unit(said_of_answer(f.comment), f.name)) out.push_back(f.name + "()");
    }
    for (const declared_object& o : what.objects)
        if (o.open && plain(o.type) && !names_unit(o.comment, o.name)) out.push_back(o.name);
    return out;
}

/// Parameters that are quantities or plain numbers and whose range is not said.
inline std::vector<std::string> without_range(const declared& what, const words& quantities,
                                              const words& functions = {})
{
    std::vector<std::string> out;
    for (const declared_function& f : what.functions) {
        if (!must_say(f) || bare_name(f.name).starts_with("operator")) continue;
        for (const std::string& p : f.parameters) {
            const auto [type, name] = type_and_name(p);
            if (name.empty() || takes_function(type) || has_word(type, "unit_of")) continue;
            const bool counts = has_word(type, "double") || has_word(type, "float") ||
                                std::any_of(quantities.begin(), quantities.end(),
                                            [&type = type](const std::string& q) { return has_word(type, q); });
            if (counts && !names_range(said_of(f.comment, name), functions)) out.push_back(f.name + "(" + name + ")");
        }
    }
    return out;
}

/// Parameters whose range is said to be another than the one the body holds them to: "function(name): check".
inline std::vector<std::string> said_otherwise(const declared& what)
{
    static const std::regex all(R"(\bany\b)"), zero(R"(\b(0|zero) (or above|or more|to)|at least 0|not negative)"),
        above_none("above (0|zero)"), more(R"(\babove\b|at least|[1-9]\S*( \w+)? to )");
    std::vector<std::string> out;
    for (const declared_function& f : what.functions) {
        if (!must_say(f)) continue;
        for (const std::string& p : f.parameters) {
            const std::string name = type_and_name(p).second;
            const auto held_to = [&](const char* check) {
                return f.body.find("require_" + std::string(check) + " ( " + name + " ,") != std::string::npos;
            };
            if (name.empty()) continue;
            const std::string said = std::regex_replace(one_line(said_of(f.comment, name)), above_none, "above none");
            const bool takes_all = std::regex_search(said, all), takes_zero = std::regex_search(said, zero);
            const auto note = [&](const char* check) { out.push_back(f.name + "(" + name + "): " + check); };
            if (held_to("positive") && (takes_all || takes_zero)) note("positive");
            if (held_to("not_negative") && !held_to("positive") &&
                (takes_all || (!takes_zero && std::regex_search(said, more))))
                note("not negative");
            if (held_to("within") && takes_all) note("within");
        }
    }
    return out;
}

/// Words of the types that public functions take, and of the types of their members: a class of that name is an
/// argument somewhere, or part of one.
template <class Headers>
words taken_by(const Headers& headers)
{
    const auto add = [](words& out, const std::string& type) {
        std::istringstream in(type);
        for (std::string t; in >> t;) out.insert(t);
    };
    words out;
    std::map<std::string, words> within;  // of the members of a class
    for (const declared& what : headers) {
        for (const declared_function& f : what.functions)
            for (const std::string& p : f.parameters)
                if (f.open) add(out, type_and_name(p).first);
        for (const declared_object& o : what.objects)
            if (o.open && o.member) add(within[bare_name(o.name.substr(0, o.name.rfind("::")))], o.type);
    }
    for (std::size_t before = 0; before != out.size();) {
        before = out.size();
        for (const auto& [name, types] : within)
            if (out.contains(name)) out.insert(types.begin(), types.end());
    }
    return out;
}

/// Members that are quantities or plain numbers of classes that are arguments, whose range is not said.
inline std::vector<std::string> members_without_range(const declared& what, const words& quantities, const words& taken,
                                                      const words& functions = {})
{
    std::vector<std::string> out;
    for (const declared_object& o : what.objects) {
        if (!o.open || !o.member || has_word(o.type, "static") || has_word(o.type, "constexpr")) continue;
        if (!taken.contains(bare_name(o.name.substr(0, o.name.rfind("::"))))) continue;
        const bool counts = has_word(o.type, "double") || has_word(o.type, "float") ||
                            std::any_of(quantities.begin(), quantities.end(),
                                        [&o](const std::string& q) { return has_word(o.type, q); });
        if (counts && !names_range(o.comment, functions)) out.push_back(o.name);
    }
    return out;
}

/// A call that stands in the body of a function.
struct call {
    std::string name;
    std::size_t arguments = 0;
    bool of_object = false;  ///< behind a dot or an arrow
    bool literal = false;    ///< all its arguments are literals
};

/// The calls of a body as `declared_function` keeps it; objects made by a constructor too.
inline std::vector<call> calls_in(const std::string& body)
{
    static const std::string opening = "([{", closing = ")]}";
    std::vector<std::string> tokens;
    std::istringstream in(body);
    for (std::string t; in >> t;) tokens.push_back(std::move(t));
    const auto is_name = [](const std::string& t) { return std::isalpha(static_cast<unsigned char>(t[0])) != 0; };
    std::vector<call> out;
    for (std::size_t i = 1; i < tokens.size(); ++i) {
        if ((tokens[i] != "(" && tokens[i] != "{") || !is_name(tokens[i - 1])) continue;
        const std::string ahead = i > 1 ? tokens[i - 2] : "";
        if (ahead == "::" && i > 2 && tokens[i - 3] == "std") continue;
        call c{tokens[i - 1], 0, ahead == "." || ahead == "->", true};
        int depth = 0;
        std::size_t j = i;
        do {
            const std::string& t = tokens[j++];
            if (opening.find(t) != std::string::npos) ++depth;
            if (closing.find(t) != std::string::npos) --depth;
            if (depth > 0 && j > i + 1 && c.arguments == 0) c.arguments = 1;
            if (t == "," && depth == 1) ++c.arguments;
            if (is_name(t) && depth > 0) c.literal = false;
        } while (depth > 0 && j < tokens.size());
        out.push_back(c);
        // an object made by a constructor: its type stands ahead of its name
        if (is_name(ahead) && ahead != "return") out.push_back({ahead, c.arguments, false, c.literal});
    }
    return out;
}

/// What each function of the library refuses, by its own checks or through those it calls. A callee is known by its
/// name and the number of its arguments, and counts where all functions it can be refuse something.
class refusals {
public:
    /// @param tree what each header declares
    /// @param careful functions, "header name", that count as refusing nothing: never given what they refuse, or never
    /// giving that to what they call
    explicit refusals(const std::map<std::string, declared>& tree, const words& careful = {})
    {
        static const std::regex refuses(R"(\bthrow \w|\brequire_\w+ (< [^;]* > )?\()");
        std::map<std::pair<std::string, std::vector<std::string>>, one> merged;  // declaration and definition
        for (const auto& [header, what] : tree)
            for (const declared_function& f : what.functions) {
                std::vector<std::string> plain;
                for (const std::string& p : f.parameters) plain.push_back(p.substr(0, p.find(" =")));
                one& o = merged[{f.name, plain}];
                o.name = f.name;
                o.header = o.header.empty() || !f.comment.empty() ? header : o.header;
                o.most = f.parameters.size();
                const auto given = static_cast<std::size_t>(
                    std::count_if(f.parameters.begin(), f.parameters.end(),
                                  [](const std::string& p) { return p.find(" =") != std::string::npos; }));
                o.least = std::min(o.least, o.most - given);
                o.open = o.open && f.open;
                o.comment += f.comment;
                o.body += f.body + " ";
            }
        for (auto& [key, o] : merged) {
            o.calls = calls_in(o.body);
            o.careful = careful.contains(o.header + " " + o.name);
            o.refuses = !o.careful && (o.comment.find("@throws") != std::string::npos ||
                                       (!o.open && std::regex_search(o.body, refuses)));
            by_name_[bare_name(o.name)].push_back(o);
        }
        for (bool more = true; more;) {
            more = false;
            for (auto& [name, all] : by_name_)
                for (one& o : all)
                    if (!o.refuses && !o.open && !catches(o) && !first_known(o).empty()) more = o.refuses = true;
        }
    }

    /// Public functions of headers that `counts` takes which call what refuses, and say nothing of it:
    /// "header name: callee".
    template <class F>
    std::vector<std::string> silent(const F& counts) const
    {
        std::vector<std::string> out;
        for (const auto& [name, all] : by_name_)
            for (const one& o : all) {
                if (!o.open || o.refuses || catches(o) || !counts(o.header)) continue;
                const std::string callee = first_known(o);
                if (!callee.empty()) out.push_back(o.header + " " + o.name + ": " + callee);
            }
        std::sort(out.begin(), out.end());
        return out;
    }

    /// Which of these, "header name", are no functions here.
    std::vector<std::string> unknown(words names) const
    {
        for (const auto& [name, all] : by_name_)
            for (const one& o : all) names.erase(o.header + " " + o.name);
        return {names.begin(), names.end()};
    }

private:
    struct one {
        std::string name, header, comment, body;
        std::size_t least = 99, most = 0;
        bool open = true, refuses = false, careful = false;
        std::vector<call> calls;
    };

    static bool is_member(const one& o) { return o.name.find("::") != std::string::npos; }
    static bool makes(const one& o) { return o.name == bare_name(o.name) + "::" + bare_name(o.name); }

    /// What catches keeps its word by itself; what is noexcept or careful too.
    static bool catches(const one& o) { return o.careful || has_word(o.body, "try") || has_word(o.body, "noexcept"); }

    /// Whether a call refuses something, whichever of the functions of its name it is.
    bool is_known(const one& from, const call& c) const
    {
        const auto all = by_name_.find(c.name);
        if (all == by_name_.end() || c.literal) return false;
        std::size_t can_be = 0;
        for (const one& o : all->second) {
            if (c.arguments < o.least || c.arguments > o.most) continue;
            if (c.of_object ? !is_member(o) || makes(o) : is_member(o) && !makes(o) && !is_member(from)) continue;
            if (!o.refuses) return false;
            ++can_be;
        }
        return can_be > 0;
    }

    std::string first_known(const one& o) const
    {
        for (const call& c : o.calls)
            if (is_known(o, c)) return c.name;
        return {};
    }

    std::map<std::string, std::vector<one>> by_name_;
};

/// Names of the source objects of the library.
inline words sources_of(const header_tree& tree)
{
    static const std::regex object(R"(\bconstexpr (?:weldloop::)?source (\w+)\s*[{=])");
    words out;
    for (const auto& [header, content] : tree)
        for (std::sregex_iterator at(content.begin(), content.end(), object), end; at != end; ++at)
            out.insert((*at)[1]);
    return out;
}

/// The headers that do not say where what they compute comes from: by a source object, their own or named, or
/// "Source:". What answers a header, x_body.hpp, speaks for it too, and the other way round.
template <class F>
std::vector<std::string> without_source(const header_tree& tree, const F& counts)
{
    static constexpr std::string_view body = "_body.hpp", ending = ".hpp";
    const words sources = sources_of(tree);
    const auto names_one = [&](const std::string& header) {
        const auto at = tree.find(header);
        return at != tree.end() &&
               (at->second.find("Source:") != std::string::npos ||
                std::any_of(sources.begin(), sources.end(), [&](const auto& s) { return has_word(at->second, s); }));
    };
    std::vector<std::string> out;
    for (const auto& [header, content] : tree) {
        if (!counts(header)) continue;
        const std::string other = header.ends_with(body) ? header.substr(0, header.size() - body.size()).append(ending)
                                                         : header.substr(0, header.size() - ending.size()).append(body);
        if (!names_one(header) && !names_one(other)) out.push_back(header);
    }
    return out;
}

}  // namespace house
