#pragma once
/// @file
/// Reader of tables of reference values: comma-separated values with RFC 4180 quotes, one header row, and comment lines
/// beginning with '#', where the source stands. Blank lines are skipped. Whatever is wrong is thrown with file and
/// line.

#include <cstddef>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include <weldloop/core/number_chars.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/text.hpp>

namespace weldloop::detail {

/// Cuts a text into records and their cells.
class csv_records {
public:
    csv_records(std::string file, std::string_view content) : file_(std::move(file)), rest_(content) {}

    [[nodiscard]] bool done() const { return rest_.empty(); }
    [[nodiscard]] std::size_t line() const { return line_; }

    [[noreturn]] void fail(std::size_t line, const std::string& what) const
    {
        throw std::runtime_error(file_ + ":" + std::to_string(line) + ": " + what);
    }

    /// The cells of the next record; none for a blank or a comment line.
    std::vector<std::string> next()
    {
        if (rest_.starts_with('#')) {
            while (!done() && take() != '\n') {}
            return {};
        }
        std::vector<std::string> cells(1);
        bool quoted = false;  // whether the current cell was written in quotes
        while (!done()) {
            const std::size_t line = line_;
            const char c = take();
            if (c == '\n') break;
            if (c == ',') {
                cells.emplace_back();
                quoted = false;
            } else if (c == '"' && cells.back().empty() && !quoted) {
                cells.back() = rest_of_quoted(line);
                quoted = true;
            } else if (c == '"' || quoted) {
                fail(line, "a quote must enclose the whole cell");
            } else {
                cells.back() += c;
            }
        }
        if (cells.size() == 1 && cells.front().empty() && !quoted) return {};
        return cells;
    }

private:
    /// Takes one character and counts lines; a carriage return before a line feed is dropped.
    char take()
    {
        if (rest_.starts_with("\r\n")) rest_.remove_prefix(1);
        const char c = rest_.front();
        rest_.remove_prefix(1);
        if (c == '\n') ++line_;
        return c;
    }

    /// What stands up to the closing quote; a doubled quote is one.
    std::string rest_of_quoted(std::size_t opened)
    {
        std::string text;
        while (!done()) {
            const char c = take();
            if (c == '"' && !rest_.starts_with('"')) return text;
            if (c == '"') take();
            text += c;
        }
        fail(opened, "a quote is not closed");
    }

    std::string file_;
    std::string_view rest_;
    std::size_t line_ = 1;
};

}  // namespace weldloop::detail

namespace weldloop::test {

/// Rows of a table, their cells reached by column name.
class value_table {
    struct heading {
        std::string file;
        std::vector<std::string> columns;
    };

public:
    /// One row.
    class row {
    public:
        /// Made by the table. @param head file and columns @param line in the file @param cells in their order
        row(std::shared_ptr<const heading> head, std::size_t line, std::vector<std::string> cells)
            : head_(std::move(head)), line_(line), cells_(std::move(cells))
        {
        }

        /// Whether the table has this column and the row something in it. @param column its name
        [[nodiscard]] bool has(std::string_view column) const
        {
            const std::size_t at = index_of(column);
            return at < cells_.size() && !cells_[at].empty();
        }

        /// The cell as written; empty where nothing is written. @param column its name
        /// @throws std::runtime_error for an unknown column
        [[nodiscard]] const std::string& text(std::string_view column) const&
        {
            const std::size_t at = index_of(column);
            if (at == cells_.size()) throw std::runtime_error(where() + ": no column '" + std::string(column) + "'");
            return cells_[at];
        }
        const std::string& text(std::string_view) const&& = delete;  ///< would outlive the row

        /// The cell as a finite number. @param column its name @throws std::runtime_error for an unknown column, or a
        /// cell that is none
        [[nodiscard]] double number(std::string_view column) const
        {
            const std::string& cell = text(column);
            const auto front = detail::number_at_front(cell);
            if (!front.value || front.used != cell.size())
                throw std::runtime_error(where() + ": '" + cell + "' in column '" + std::string(column) +
                                         "' is not a number");
            return *front.value;
        }

        /// The cell as a quantity: row.quantity<voltage>("drop_mV", "mV").
        /// @param column its name @param unit of its numbers; one that does not measure Q does not compile
        /// @throws std::runtime_error for an unknown column, or a cell that is no number
        template <class Q>
        [[nodiscard]] Q quantity(std::string_view column, unit_of<std::type_identity_t<Q>> unit) const
        {
            return in_si<Q>(number(column) * unit.in_si());
        }

        /// "file:line", to name a row in a failed check.
        [[nodiscard]] std::string where() const { return head_->file + ":" + std::to_string(line_); }

    private:
        /// Position of the column, or the number of cells where there is none of that name.
        [[nodiscard]] std::size_t index_of(std::string_view column) const
        {
            std::size_t at = 0;
            while (at < cells_.size() && head_->columns[at] != column) ++at;
            return at;
        }

        std::shared_ptr<const heading> head_;
        std::size_t line_;
        std::vector<std::string> cells_;
    };

    /// Reads a file. @param file its path @throws std::runtime_error for what cannot be read, or is no table
    [[nodiscard]] static value_table from_file(const std::filesystem::path& file)
    {
        return {file.string(), contents_of(file)};
    }

    /// Reads the text of a table. @param file names it in errors @param content of it
    /// @throws std::runtime_error for what is no table, and for one without rows: a loop over it would check nothing
    value_table(const std::string& file, std::string_view content)
    {
        detail::csv_records records(file, content);
        std::shared_ptr<const heading> head;
        while (!records.done()) {
            const std::size_t line = records.line();
            std::vector<std::string> cells = records.next();
            if (cells.empty()) continue;
            if (!head) {
                head = std::make_shared<const heading>(heading{file, std::move(cells)});
                if (const std::string fault = fault_in(head->columns); !fault.empty()) records.fail(line, fault);
            } else if (cells.size() != head->columns.size()) {
                records.fail(line, std::to_string(cells.size()) + " cell(s) where the header has " +
                                       std::to_string(head->columns.size()));
            } else {
                rows_.emplace_back(head, line, std::move(cells));
            }
        }
        if (rows_.empty()) records.fail(records.line(), "no rows");
    }

    [[nodiscard]] const std::vector<row>& rows() const& { return rows_; }  ///< in their order; at least one
    [[nodiscard]] std::vector<row> rows() && { return std::move(rows_); }  ///< the same, of a table that goes

private:
    static std::string contents_of(const std::filesystem::path& path)
    {
        std::ifstream in(path, std::ios::binary);
        if (!in) throw std::runtime_error(path.string() + ": cannot be read");
        return {std::istreambuf_iterator<char>(in), {}};
    }

    static std::string fault_in(const std::vector<std::string>& columns)
    {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (columns[i].empty()) return "a column without a name";
            for (std::size_t k = 0; k < i; ++k)
                if (columns[k] == columns[i]) return "column '" + columns[i] + "' twice";
        }
        return {};
    }

    std::vector<row> rows_;
};

}  // namespace weldloop::test
