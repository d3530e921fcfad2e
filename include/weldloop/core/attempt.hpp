#pragma once
/// @file
/// Errors as values, for callers who do not let exceptions through: any question, asked by attempt(), gives its answer
/// or a failure, and throws nothing.

#include <exception>
#include <functional>
#include <new>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>

#include <weldloop/core/error.hpp>

namespace weldloop {

/// Why a question has no answer.
struct failure {
    std::optional<error_id> id = {};  ///< stable number of the kind; none for what the library did not throw on purpose
    std::string argument = {};        ///< the offending argument; empty where there is no id
    std::string value = {};           ///< its value, as text with unit; empty where there is no id
    std::string allowed = {};         ///< what would have been accepted; empty where there is no id
    std::string text = {};            ///< the whole message; with file, line and column for a station file
};

/// An answer or a failure; std::monostate is the answer of what returns nothing.
template <class Answer>
class [[nodiscard]] outcome {
public:
    outcome(Answer answer) : held_(std::in_place_index<0>, std::move(answer)) {}                ///< answered
    outcome(weldloop::failure why) noexcept : held_(std::in_place_index<1>, std::move(why)) {}  ///< not answered

    [[nodiscard]] bool has_answer() const noexcept { return held_.index() == 0; }   ///< whether there is an answer
    [[nodiscard]] explicit operator bool() const noexcept { return has_answer(); }  ///< as has_answer()

    /// The answer; null where there is none.
    [[nodiscard]] const Answer* answer() const& noexcept { return std::get_if<0>(&held_); }
    /// Why there is none; null where there is an answer.
    [[nodiscard]] const weldloop::failure* failure() const& noexcept { return std::get_if<1>(&held_); }
    const Answer* answer() const&& = delete;              // would outlive what it points to
    const weldloop::failure* failure() const&& = delete;  // likewise

    /// As answer(), after a look at has_answer(): undefined where there is none.
    [[nodiscard]] const Answer& operator*() const& noexcept { return *answer(); }
    /// As answer(). Undefined where there is none.
    [[nodiscard]] const Answer* operator->() const& noexcept { return answer(); }

private:
    std::variant<Answer, weldloop::failure> held_;
};

#ifdef __cpp_exceptions  // error.hpp has refused the unit already: one sentence is enough

namespace detail {

/// The exception in flight as a failure. Where no memory is left for its words, those that fit without.
[[nodiscard]] inline failure failure_in_flight() noexcept
{
    try {
        try {
            throw;
        } catch (const error& e) {
            return {
                .id = e.id(), .argument = e.argument(), .value = e.value(), .allowed = e.allowed(), .text = e.what()};
        } catch (const std::bad_alloc&) {
            return {.text = "out of memory"};
        } catch (const std::exception& e) {
            return {.text = e.what()};
        } catch (...) {
            return {.text = "unknown error"};
        }
    } catch (...) {
        return {.text = "out of memory"};  // fits into a string without memory of its own
    }
}

}  // namespace detail

/// Asks a question and keeps what it throws. Never throws itself.
/// @param question called once without arguments: attempt([&] { return assess(bench); })
/// @return what it returns, by value, or why not: every error of the library has an id; memory that ran out, or what a
///         caller's own code threw, has none
template <class Question>
[[nodiscard]] auto attempt(Question&& question) noexcept
{
    using given = std::remove_cvref_t<std::invoke_result_t<Question>>;
    if constexpr (std::is_void_v<given>) {
        try {
            std::invoke(std::forward<Question>(question));
            return outcome<std::monostate>(std::monostate{});
        } catch (...) {
            return outcome<std::monostate>(detail::failure_in_flight());
        }
    } else {
        try {
            return outcome<given>(std::invoke(std::forward<Question>(question)));
        } catch (...) {
            return outcome<given>(detail::failure_in_flight());
        }
    }
}

#endif

}  // namespace weldloop
