// What the comment of a public name must say beside being there: the unit of a plain number, the range of an argument,
// what the function refuses through those it calls, and the source of a law. The rules and the words that count stand
// in DEVELOPERS.md, the reading in stated.hpp.
#include <algorithm>
#include <array>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "house/header_tree.hpp"
#include "house/stated.hpp"

namespace {

using house::words;

/// The library, read once.
struct library {
    house::header_tree texts = house::headers_of_the_library();
    std::map<std::string, house::declared> headers = {};
    words quantities = house::quantities_of(texts), functions = house::functions_of(texts),
          sources = house::sources_of(texts), taken = {};

    library()
    {
        for (const auto& [header, content] : texts) headers[header] = house::declared_in(content);
        std::vector<house::declared> that_take;
        for (const auto& [header, what] : headers)
            if (!is_in(header, {"io", "test"})) that_take.push_back(what);  // those take results, to show them
        taken = house::taken_by(that_take);
    }

    /// Whether a header stands in one of these folders.
    static bool is_in(const std::string& header, const words& folders)
    {
        const std::string_view below = std::string_view(header).substr(std::string_view("weldloop/").size());
        return folders.contains(std::string(below.substr(0, below.find('/'))));
    }
};

const library& the_library()
{
    static const library it;
    return it;
}

const words with_sources{"material", "law", "circuit", "life"};  // and rating/lead/

/// Headers of those folders that only name, hold or hand on: no formula of their own.
const words without_formula{"weldloop/circuit/contact_hold.hpp",
                            "weldloop/circuit/course_levels.hpp",
                            "weldloop/circuit/duty_trace.hpp",
                            "weldloop/circuit/joint_circuit.hpp",
                            "weldloop/circuit/lead_in_part.hpp",
                            "weldloop/circuit/loop_state.hpp",
                            "weldloop/circuit/part_place.hpp",
                            "weldloop/circuit/part_sheet.hpp",
                            "weldloop/circuit/part_surface.hpp",
                            "weldloop/circuit/path_part.hpp",
                            "weldloop/circuit/rise_table.hpp",
                            "weldloop/circuit/sheeted_parts.hpp",
                            "weldloop/circuit/station.hpp",
                            "weldloop/circuit/station_parts.hpp",
                            "weldloop/circuit/way.hpp",
                            "weldloop/law/heating_segment.hpp",
                            "weldloop/law/lay.hpp",
                            "weldloop/law/surface_model.hpp",
                            "weldloop/life/clamp_place.hpp",
                            "weldloop/life/clamp_use.hpp",
                            "weldloop/life/grip_map_result.hpp",
                            "weldloop/life/station_service.hpp",
                            "weldloop/material/metal.hpp"};

/// Headers of results: what their members hold was computed, and others take it to look at it.
const words of_results{
    "weldloop/circuit/loop_state.hpp", "weldloop/circuit/operating_state.hpp", "weldloop/field/fault_search.hpp",
    "weldloop/life/clamp_life.hpp",    "weldloop/life/grip_forecast.hpp",      "weldloop/life/joint_drift.hpp",
    "weldloop/rating/assessment.hpp",  "weldloop/rating/course_effects.hpp",   "weldloop/rating/station_life.hpp",
    "weldloop/rating/yearly_loss.hpp", "weldloop/solve/heat_network.hpp",      "weldloop/solve/periodic_state.hpp",
    "weldloop/solve/span_sums.hpp"};

/// Functions that never get what they refuse, or never give it to what they call: they say nothing of it.
const words careful{
    // refuse a count of digits, which is written out wherever they are called
    "weldloop/core/number_text.hpp number_text", "weldloop/io/report/report_words.hpp fixed_text",
    // give constants
    "weldloop/circuit/lug_behaviour.hpp palm_basis", "weldloop/circuit/set_screw_behaviour.hpp basis_of",
    "weldloop/law/scatter.hpp probability_better", "weldloop/part/crimped_lug.hpp crimped_lug",
    // count the places of the station themselves
    "weldloop/io/report/report_words.hpp work_connection_of", "weldloop/io/report/surface_words.hpp surfaces_in_use",
    "weldloop/rating/cautions.hpp cautions_for", "weldloop/rating/remedy_finder.hpp changes_for",
    "weldloop/rating/usual_size.hpp family_in_use",
    // draw at coordinates made of counts
    "weldloop/io/draw/loop_column.hpp loop_column", "weldloop/io/draw/loop_column.hpp way_column",
    // have looked before: at the lead's limit, at the air against the column, at what the constructor was given
    "weldloop/part/conductor_limit.hpp is_limit_above_lead", "weldloop/rating/lead/code_rating.hpp code_ampacity_of",
    "weldloop/rating/lead/code_rating.hpp guide_rating_of",
    "weldloop/law/relaxation_choice.hpp code_relaxation_state::lost",
    "weldloop/law/relaxation_choice.hpp code_relaxation_state::extrapolated"};

}  // namespace

TEST(Stated, ReadsTheWholeLibrary)
{
    std::size_t functions = 0, commented = 0;
    for (const auto& [header, what] : the_library().headers)
        for (const house::declared_function& f : what.functions) {
            ++functions;
            if (house::must_say(f)) ++commented;
        }
    EXPECT_GT(functions, 3000U);
    EXPECT_GT(commented, 1000U);
}

TEST(Stated, UnitsOfPlainNumbers)
{
    for (const auto& [header, what] : the_library().headers) {
        EXPECT_THAT(house::without_unit(what), testing::IsEmpty()) << header;
    }
}

TEST(Stated, RangesOfArguments)
{
    const library& lib = the_library();
    for (const auto& [header, what] : lib.headers) {
        EXPECT_THAT(house::without_range(what, lib.quantities, lib.functions), testing::IsEmpty()) << header;
        EXPECT_THAT(house::said_otherwise(what), testing::IsEmpty()) << header;
        if (of_results.contains(header)) continue;
        EXPECT_THAT(house::members_without_range(what, lib.quantities, lib.taken, lib.functions), testing::IsEmpty())
            << header;
    }
}

TEST(Stated, WhatIsRefusedThroughOthers)
{
    const library& lib = the_library();
    const house::refusals found(lib.headers, careful);
    EXPECT_THAT(found.silent([](const std::string&) { return true; }), testing::IsEmpty());
    EXPECT_THAT(found.unknown(careful), testing::IsEmpty()) << "functions that are no more";
}

TEST(Stated, SourcesOfLaws)
{
    const library& lib = the_library();
    for (const words* list : {&without_formula, &of_results})
        for (const std::string& header : *list) EXPECT_TRUE(lib.texts.contains(header)) << header;
    EXPECT_THAT(house::without_source(lib.texts,
                                      [](const std::string& header) {
                                          return !without_formula.contains(header) &&
                                                 (library::is_in(header, with_sources) ||
                                                  header.starts_with("weldloop/rating/lead/"));
                                      }),
                testing::IsEmpty());
}

TEST(StatedRules, SeeAMissingUnit)
{
    using testing::ElementsAre, testing::IsEmpty;
    const auto missing = [](const std::string& text) { return house::without_unit(house::declared_in(text)); };
    EXPECT_THAT(missing("/// Half [m]. @param x whole [m]\ninline double half(double x) { return x / 2; }\n"),
                IsEmpty());
    EXPECT_THAT(missing("/// Half. @param x whole [m]\ninline double half(double x) { return x / 2; }\n"),
                ElementsAre("half()"));
    EXPECT_THAT(missing("/// Half [m]. @param x whole\n/// @return [m]\ndouble half(double x);\n"),
                ElementsAre("half(x)"));
    EXPECT_THAT(missing("/// Half of `x` [m], in metres [m].\ndouble half(double x);\n"), IsEmpty());
    EXPECT_THAT(missing("/// Part.\nvoid put(double share, double loose);\n"), ElementsAre("put(loose)"));
    EXPECT_THAT(missing("/// Width.\nstruct s {\n    double a = 0.0;  ///< wide\n    double b;  ///< [m] wide\n"
                        "    std::optional<double> c = {};  ///< a ratio\n    float d[2];  ///< high\n};\n"),
                ElementsAre("s::a", "s::d"));
    EXPECT_THAT(missing("/// A number of them.\nstruct s {\n    double a = 0.0;\n};\n"), ElementsAre("s::a"));
    EXPECT_THAT(missing("/// Half [m].\ntemplate <class T>\n    requires fits<T>\ndouble half(T x);\n"), IsEmpty());
    EXPECT_THAT(missing("/// Most.\ninline constexpr double most = 3.0;\n"), ElementsAre("most"));
    EXPECT_THAT(missing("/// @name Most\n/// @{\n/// Of turns.\ninline constexpr double most = 3.0;\n/// @}\n"),
                IsEmpty());
    EXPECT_THAT(missing("namespace detail {\n/// Most.\ninline constexpr double most = 3.0;\n}  // namespace detail\n"),
                IsEmpty());
    EXPECT_THAT(missing("/// A thing.\nclass c {\n    double hidden_;\npublic:\n    double open;  ///< wide\n};\n"),
                ElementsAre("c::open"));
}

TEST(StatedRules, SeeAMissingRange)
{
    using testing::ElementsAre, testing::IsEmpty;
    const words quantities{"length", "force"}, functions{"half"};
    const auto missing = [&](const std::string& text) {
        return house::without_range(house::declared_in(text), quantities, functions);
    };
    EXPECT_THAT(missing("/// Half. @param x [m], above 0\nlength half(length x);\n"), IsEmpty());
    EXPECT_THAT(missing("/// Half. @param x [m], 0.1 mm to 2 m\nlength half(length x);\n"), IsEmpty());
    EXPECT_THAT(missing("/// Half. @param x [m] from the jaw to the cable\nlength half(length x);\n"),
                ElementsAre("half(x)"));
    EXPECT_THAT(missing("/// Half.\nlength half(const band<weldloop::length>& x);\n"), ElementsAre("half(x)"));
    EXPECT_THAT(missing("/// Half. @param x [m], as in half()\nlength again(length x);\n"), IsEmpty());
    EXPECT_THAT(missing("/// Half. @param x [m], as in quarter()\nlength again(length x);\n"), ElementsAre("again(x)"));
    EXPECT_THAT(missing("/// Half. @param x [m]\n/// @throws error for one not above 0\nlength half(length x);\n"),
                ElementsAre("half(x)"));
    EXPECT_THAT(missing("/// Half. @param i which\nlength half(int i, temperature at);\n"), IsEmpty());

    const auto members = [&](const std::string& text) {
        const house::declared what = house::declared_in(text);
        return house::members_without_range(what, quantities, house::taken_by(std::vector{what}));
    };
    const std::string part =
        "/// A part.\nstruct part {\n    length wide;  ///< [m]\n    force on;  ///< [N] above 0\n};\n";
    EXPECT_THAT(members(part), IsEmpty());  // nothing takes one
    EXPECT_THAT(members(part + "/// Half. @param p of it\nlength half(const part& p);\n"), ElementsAre("part::wide"));
    EXPECT_THAT(
        members(part + "/// Two.\nstruct pair {\n    std::optional<part> one;  ///< of them\n};\n/// Half. @param p of "
                       "it\nlength half(const pair& p);\n"),
        ElementsAre("part::wide"));
}

TEST(StatedRules, SeeARangeThatIsNotTheOneHeld)
{
    using testing::ElementsAre, testing::IsEmpty;
    const auto wrong = [](const std::string& said, const std::string& check) {
        return house::said_otherwise(house::declared_in("/// Half. @param x [m], " + said +
                                                        "\nlength half(length x)\n{\n    return " + check +
                                                        "(x, \"x\") / 2.0;\n}\n"));
    };
    EXPECT_THAT(wrong("above 0", "require_positive"), IsEmpty());
    EXPECT_THAT(wrong("above 0 to 2000 m", "require_positive"), IsEmpty());
    EXPECT_THAT(wrong("0 or\n/// above", "require_positive"), ElementsAre("half(x): positive"));
    EXPECT_THAT(wrong("any", "require_positive"), ElementsAre("half(x): positive"));
    EXPECT_THAT(wrong("0 or above", "require_not_negative"), IsEmpty());
    EXPECT_THAT(wrong("0 to 2 m", "require_not_negative"), IsEmpty());
    EXPECT_THAT(wrong("above 0", "require_not_negative"), ElementsAre("half(x): not negative"));
    EXPECT_THAT(wrong("0 to 1", "require_within"), IsEmpty());
    EXPECT_THAT(wrong("any", "require_within"), ElementsAre("half(x): within"));
    EXPECT_THAT(wrong("any", "require_finite"), IsEmpty());
}

TEST(StatedRules, SeeWhatIsSilentOfOthers)
{
    using testing::ElementsAre, testing::IsEmpty;
    const auto silent = [](const std::string& text, const words& spared = {}) {
        return house::refusals({{"a.hpp", house::declared_in(text)}}, spared).silent([](const std::string&) {
            return true;
        });
    };
    const std::string half = "/// Half. @throws error\nint half(int a, int b = 2);\n";
    EXPECT_THAT(silent(half + "/// Twice.\nint twice(int a) { return half(a) * 4; }\n"),
                ElementsAre("a.hpp twice: half"));
    EXPECT_THAT(silent(half + "/// Twice. @throws as half()\nint twice(int a) { return half(a, a) * 4; }\n"),
                IsEmpty());
    EXPECT_THAT(silent(half + "/// Four.\nint four() { return half(8); }\n"), IsEmpty());
    EXPECT_THAT(silent(half + "/// Safe.\nint safe(int a)\n{\n    try {\n        return half(a);\n    } catch (...) {\n"
                              "        return 0;\n    }\n}\n"),
                IsEmpty());
    EXPECT_THAT(silent(half + "/// Half.\nint half(double a);\n/// Twice.\nint twice(int a) { return half(a); }\n"),
                IsEmpty())  // which of the two is not known
        << "an overload";
    const std::string inner = "namespace detail {\nint checked(int a) { return require_even(a); }\nint again(int a) { "
                              "return checked(a); }\n}\n";
    EXPECT_THAT(silent(inner + "/// Twice.\nint twice(int a) { return detail::again(a); }\n"),
                ElementsAre("a.hpp twice: again"));
    EXPECT_THAT(silent(inner + "/// Twice.\nint twice(int a) { return detail::again(a); }\n", {"a.hpp twice"}),
                IsEmpty());
    const std::string made = "class box {\npublic:\n    /// A box. @throws error\n    explicit box(int a);\n};\n";
    EXPECT_THAT(silent(made + "/// One.\nint one(int a)\n{\n    const box b(a);\n    return 1;\n}\n"),
                ElementsAre("a.hpp one: box"));
    // declared with its comment in one header, answered in another
    EXPECT_THAT(silent(half + "/// Twice.\nint twice(int a);\ninline int twice(int a) { return half(a); }\n"),
                ElementsAre("a.hpp twice: half"));
}

TEST(StatedRules, SeeAMissingSource)
{
    using testing::ElementsAre, testing::IsEmpty;
    const auto all = [](const std::string&) { return true; };
    EXPECT_THAT(house::without_source({{"a.hpp", "inline constexpr source holm{};"}, {"b.hpp", "/// By holm.\n"}}, all),
                IsEmpty());
    EXPECT_THAT(house::without_source({{"a.hpp", "/// By Holm.\n"}, {"b.hpp", "/// Source: Ohm's law.\n"}}, all),
                ElementsAre("a.hpp"));
    EXPECT_THAT(house::without_source({{"a.hpp", "/// It.\n"}, {"a_body.hpp", "/// Source: Ohm's law.\n"}}, all),
                IsEmpty());
}
