#pragma once
// Which functions and objects a header declares, with what parameters and comments: read from its text as the
// compiler's first phases read it. Enough of C++ for this library's headers; what it does not understand it reports, so
// that nothing passes unseen.

#include <cctype>
#include <cstddef>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace house {

/// One function as declared: its name with the types around it, the text of each parameter, and whether a user may call
/// it (it stands in no namespace `detail` and in no private part of a class).
struct declared_function {
    std::string name;
    std::vector<std::string> parameters;
    bool open = true;
    std::string comment = {};  ///< its own, with that of the group it stands in; each line with its end
    std::string before = {};   ///< what stands before the name: the type of its answer
    std::string body = {};     ///< what stands behind the parameters
};

/// One object as declared: a member of a class or of a namespace.
struct declared_object {
    std::string name, type, comment;
    bool open = true;
    bool member = false;  ///< of a class
};

/// What a header declares.
struct declared {
    std::vector<declared_function> functions;
    std::vector<declared_object> objects;
};

namespace reading {

inline constexpr char comment_mark = '\x01';

/// Lines joined that go on in the next, comments gone, literals empty, directives gone but for what a macro stands for:
/// that is read in its place, so that a function a macro makes is seen.
/// @param comments if given, takes the comments for Doxygen; where each stood is then marked by `comment_mark`, its
/// number and the mark again
inline std::string plain_text(const std::string& raw, std::vector<std::string>* comments = nullptr)
{
    static const std::regex goes_on(R"(\\[ \t]*\n)"), directive(R"(^[ \t]*#)"),
        define(R"(^[ \t]*#[ \t]*define[ \t]+\w+(?:\([^)]*\))?)");
    const std::string joined = std::regex_replace(raw, goes_on, " ");
    std::string text;
    for (std::size_t i = 0; i < joined.size();) {
        const auto starts = [&](std::string_view what) { return joined.compare(i, what.size(), what) == 0; };
        const auto name_before = [&] { return i > 0 && (std::isalnum(joined[i - 1]) != 0 || joined[i - 1] == '_'); };
        if (starts("//")) {
            const std::size_t end = joined.find('\n', i);
            if (comments != nullptr && starts("///")) {
                text += comment_mark + std::to_string(comments->size()) + comment_mark;
                comments->push_back(joined.substr(i + 3, end == std::string::npos ? end : end - i - 3));
            }
            i = end;
        } else if (starts("/*")) {
            i = joined.find("*/", i);
            if (i != std::string::npos) i += 2;
            text += ' ';
        } else if (starts("R\"") && !name_before()) {
            const std::size_t open = joined.find('(', i);
            const std::string close = ")" + joined.substr(i + 2, open - i - 2) + "\"";
            i = joined.find(close, open);
            if (i != std::string::npos) i += close.size();
            text += "\"\"";
        } else if (joined[i] == '"' || (joined[i] == '\'' && !name_before())) {
            const char mark = joined[i++];
            while (i < joined.size() && joined[i] != mark) i += joined[i] == '\\' ? 2U : 1U;
            ++i;
            text += mark == '"' ? "\"\"" : "0";
        } else {
            text += joined[i++];
        }
        if (i == std::string::npos) break;
    }
    // a macro may stand for a number or for part of a declaration; only whole functions are read
    std::string out;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line); out += '\n') {
        std::smatch head;
        if (std::regex_search(line, head, define)) {
            const std::string body = head.suffix();
            if (body.find('{') != std::string::npos) out += body;
        } else if (!std::regex_search(line, directive)) {
            out += line;
        }
    }
    return out;
}

inline std::vector<std::string> tokens_of(const std::string& text)
{
    std::vector<std::string> tokens;
    for (std::size_t i = 0; i < text.size();) {
        const char c = text[i];
        std::size_t length = 1;
        if (std::isspace(static_cast<unsigned char>(c)) != 0) {
            ++i;
            continue;
        }
        if (c == comment_mark) {
            length = text.find(comment_mark, i + 1) - i + 1;
        } else if (std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_') {
            while (i + length < text.size() && (std::isalnum(static_cast<unsigned char>(text[i + length])) != 0 ||
                                                text[i + length] == '_' || text[i + length] == '\''))
                ++length;
        } else if (text.compare(i, 3, "...") == 0) {
            length = 3;
        } else if (text.compare(i, 2, "::") == 0 || text.compare(i, 2, "->") == 0 || text.compare(i, 2, "\"\"") == 0) {
            length = 2;
        }
        tokens.push_back(text.substr(i, length));
        i += length;
    }
    return tokens;
}

/// Walks the declarations of a header.
class walker {
public:
    explicit walker(const std::string& content)
    {
        std::vector<std::string> comments;
        for (std::string& token : tokens_of(plain_text(content, &comments))) {
            if (token.front() != comment_mark) {
                tokens_.push_back(std::move(token));
                continue;
            }
            const std::string& said = comments[std::stoul(token.substr(1))];
            const bool behind = said.starts_with("<") && !tokens_.empty();
            (behind ? behind_[tokens_.size() - 1] : before_[tokens_.size()]) += said.substr(behind ? 1 : 0) + "\n";
        }
    }

    declared all()
    {
        scope("", true);
        if (at_ != tokens_.size()) throw std::runtime_error("a brace closes that none opened");
        return found_;
    }

private:
    const std::string& now() const
    {
        static const std::string nothing;
        return at_ < tokens_.size() ? tokens_[at_] : nothing;
    }
    const std::string& next() const
    {
        static const std::string nothing;
        return at_ + 1 < tokens_.size() ? tokens_[at_ + 1] : nothing;
    }
    void step()
    {
        if (at_ >= tokens_.size()) throw std::runtime_error("the text ends within a declaration");
        ++at_;
    }
    static bool is_name(const std::string& token)
    {
        return !token.empty() && (std::isalpha(static_cast<unsigned char>(token[0])) != 0 || token[0] == '_');
    }

    static bool is_macro(const std::string& token)
    {
        return token.starts_with("WELDLOOP_") && token.find_first_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos;
    }

    /// Past the bracket that closes the one here.
    void past_brackets()
    {
        static const std::string opening = "([{", closing = ")]}";
        std::string open;
        do {
            if (opening.find(now()) != std::string::npos)
                open += now();
            else if (closing.find(now()) != std::string::npos) {
                if (open.empty() || opening.find(open.back()) != closing.find(now()))
                    throw std::runtime_error("brackets do not match");
                open.pop_back();
            }
            step();
        } while (!open.empty());
    }
    /// Past the `>` that closes the `<` here.
    void past_angles()
    {
        int depth = 0;
        do {
            if (now() == "<") ++depth;
            if (now() == ">") --depth;
            if (now() == "(" || now() == "{" || now() == "[")
                past_brackets();
            else
                step();
        } while (depth > 0);
    }
    void past_semicolon()
    {
        while (now() != ";") {
            if (now() == "(" || now() == "{" || now() == "[")
                past_brackets();
            else
                step();
        }
        step();
    }
    /// Past a name with its scopes and template arguments.
    void past_name()
    {
        while (is_name(now()) || now() == "::") {
            step();
            if (now() == "<") past_angles();
        }
    }
    void past_requirement()
    {
        step();
        while (true) {
            while (now() == "!") step();
            if (now() == "(")
                past_brackets();
            else if (now() == "requires") {
                step();
                if (now() == "(") past_brackets();
                past_brackets();
            } else {
                // a concept's name ends at its closing angle
                while (is_name(now()) || now() == "::") {
                    step();
                    if (now() == "<") {
                        past_angles();
                        if (now() != "::") break;
                    }
                }
            }
            if ((now() != "&" && now() != "|") || now() != next()) return;
            step();
            step();
        }
    }

    void scope(const std::string& inside, bool open)
    {
        while (at_ < tokens_.size() && now() != "}") declaration(inside, open);
    }

    /// Takes the comment above what stands here; none, unless it goes on from what stands before (a template's head).
    /// What opens a group is kept for all that stand in it.
    void take_comment(bool goes_on)
    {
        const auto above = before_.find(at_);
        if (above == before_.end() && goes_on) return;
        comment_.clear();
        if (above == before_.end()) return;
        std::istringstream lines(above->second);
        for (std::string line; std::getline(lines, line);) {
            if (line.find("@cond") != std::string::npos || line.find("@endcond") != std::string::npos) {
                comment_.clear();
            } else if (line.find("@}") != std::string::npos) {
                group_.clear();
                comment_.clear();
            } else if (line.find("@{") != std::string::npos) {
                group_ = comment_;
                comment_.clear();
            } else {
                comment_ += line + "\n";
            }
        }
    }
    /// The comment of the declaration that ended before here.
    std::string comment_here() const
    {
        const auto behind = behind_.find(at_ - 1);
        return comment_ + (behind == behind_.end() ? "" : behind->second) + group_;
    }
    std::string text_of(std::size_t from, std::size_t to) const
    {
        std::string text;
        for (std::size_t i = from; i < to; ++i) text += (text.empty() ? "" : " ") + tokens_[i];
        return text;
    }

    void declaration(const std::string& inside, bool& open)
    {
        take_comment(goes_on_);
        const bool is_head = now() == "template" || now() == "requires";
        goes_on_ = false;
        declaration_here(inside, open);
        goes_on_ = is_head;
    }

    void declaration_here(const std::string& inside, bool& open)
    {
        static const std::set<std::string> to_semicolon{"using", "static_assert", "typedef", "concept", "enum"};
        if (now() == ";") return step();
        if ((now() == "public" || now() == "private" || now() == "protected") && next() == ":") {
            open = now() == "public" && enclosing_open_;
            step();
            return step();
        }
        if (now() == "inline" && next() == "namespace") step();
        if (now() == "namespace") return name_space(inside, open);
        if (now() == "template") {
            step();
            if (now() == "<") past_angles();
            return;  // what follows is read as any declaration
        }
        if (now() == "requires") return past_requirement();
        if (to_semicolon.contains(now())) return past_semicolon();
        if (now() == "struct" || now() == "class" || now() == "union") {
            if (type(inside, open)) return;
        }
        object_or_function(inside, open);
    }

    void name_space(const std::string& inside, bool open)
    {
        step();
        bool visible = open;
        while (is_name(now()) || now() == "::") {
            if (now() == "detail") visible = false;
            step();
        }
        if (now() != "{") return past_semicolon();  // an alias
        step();
        const bool before = enclosing_open_;
        enclosing_open_ = visible;
        scope(inside, visible);
        enclosing_open_ = before;
        step();
    }

    /// A class with its body; not for one that is only declared or named before something else.
    bool type(const std::string& inside, bool open)
    {
        std::size_t look = at_;
        while (look < tokens_.size() && tokens_[look] != "{" && tokens_[look] != ";" && tokens_[look] != "(" &&
               tokens_[look] != "=")
            ++look;
        if (look >= tokens_.size() || tokens_[look] != "{") return false;
        const bool is_class = now() == "class";
        step();
        while (now() == "[") past_brackets();
        const std::string name = now();
        at_ = look;
        step();
        const bool before = enclosing_open_;
        enclosing_open_ = open;
        scope(inside + name + "::", open && !is_class);
        enclosing_open_ = before;
        step();
        return true;
    }

    void object_or_function(const std::string& inside, bool open)
    {
        static const std::set<std::string> not_functions{"explicit", "noexcept", "decltype", "alignas", "sizeof"};
        std::string name;
        const std::size_t begin = at_;
        const auto object = [&] {
            std::size_t end = at_;
            while (end > begin && (tokens_[end - 1] != name)) --end;
            past_semicolon();
            found_.objects.push_back(
                {inside + name, text_of(begin, end > begin ? end - 1 : begin), comment_here(), open, !inside.empty()});
        };
        while (true) {
            if (now() == "operator") {
                const std::size_t before = at_;
                name = "operator";
                step();
                if (now() == "(") {
                    step();
                    step();
                    name += "()";
                }
                while (now() != "(") {
                    name += now();
                    step();
                }
                return function(inside + name, open, text_of(begin, before));
            }
            if (now() == ";" || now() == "=" || now() == "{" || now() == ":") return object();
            if (now() == "[") {
                past_brackets();
            } else if (now() == "<") {
                past_angles();
            } else if (now() == "(") {
                if (is_macro(name)) return past_brackets();  // what it makes is read where it is defined
                if (is_name(name) && !not_functions.contains(name))
                    return function(inside + name, open, text_of(begin, at_ - 1));
                past_brackets();
                if (name == "explicit") name.clear();
            } else {
                if (now() == "}") throw std::runtime_error("a declaration ends at a brace: " + name);
                name = now() == "~" ? "" : now();
                step();
            }
        }
    }

    void function(const std::string& name, bool open, std::string before)
    {
        declared_function f{name, parameters(), open};
        f.before = std::move(before);
        const std::size_t begin = at_;
        past_function();
        f.body = text_of(begin, at_);
        f.comment = comment_here();
        found_.functions.push_back(std::move(f));
    }
    void past_function()
    {
        while (now() != ";" && now() != "{" && now() != ":") {
            if (now() == "=") return past_semicolon();
            if (now() == "(" || now() == "[")
                past_brackets();
            else if (now() == "<")
                past_angles();
            else if (now() == "requires")
                past_requirement();
            else
                step();
        }
        if (now() == ":") {  // a constructor's members
            do {
                step();
                past_name();
                past_brackets();
            } while (now() == ",");
        }
        if (now() == ";") return step();
        past_brackets();
    }

    /// The parameters in the parentheses here, each as its text.
    std::vector<std::string> parameters()
    {
        std::vector<std::string> list;
        const std::size_t begin = at_ + 1;
        past_brackets();
        const std::size_t end = at_ - 1;
        std::string one;
        int depth = 0;
        for (std::size_t i = begin; i < end; ++i) {
            const std::string& token = tokens_[i];
            if (token == "(" || token == "{" || token == "[" || token == "<") ++depth;
            if (token == ")" || token == "}" || token == "]" || token == ">") --depth;
            if (token == "," && depth == 0) {
                list.push_back(one);
                one.clear();
                continue;
            }
            if (!one.empty()) one += ' ';
            one += token;
        }
        if (!one.empty() && one != "void") list.push_back(one);
        return list;
    }

    std::vector<std::string> tokens_;
    std::size_t at_ = 0;
    bool enclosing_open_ = true, goes_on_ = false;
    std::map<std::size_t, std::string> before_, behind_;  // comments by the token they stand beside
    std::string comment_, group_;
    declared found_;
};

}  // namespace reading

/// What a header declares.
/// @throws std::runtime_error for a text the reading does not understand
inline declared declared_in(const std::string& content)
{
    return reading::walker(content).all();
}

/// The functions a header declares.
/// @throws std::runtime_error for a text the reading does not understand
inline std::vector<declared_function> functions_in(const std::string& content)
{
    return declared_in(content).functions;
}

}  // namespace house
