// Writes the JSON report of every station of the tests into a folder, and words.json: every word of every enumeration
// that a report may hold, as the library says them. validate.py holds both against the schema.
#include <exception>
#include <filesystem>
#include <iostream>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include "io/example_stations.hpp"
#include "io/stations_with_all_keys.hpp"

#include <weldloop/io/report/first_actions.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/write_file.hpp>

using namespace weldloop;

namespace {

// The words of an enumeration in its order. What lies beyond its last enumerator falls back on a word said before, or
// on `beyond`.
template <class Enumeration>
std::vector<std::string> words_of(std::string_view (*word)(Enumeration), std::string_view beyond = {})
{
    std::vector<std::string> out;
    std::set<std::string> said;
    for (int i = 0;; ++i) {
        const std::string next(word(static_cast<Enumeration>(i)));
        if (next == beyond || !said.insert(next).second) return out;
        out.push_back(next);
    }
}

nlohmann::ordered_json all_words()
{
    nlohmann::ordered_json out;
    out["answer"] = words_of<circuit_answer>(to_text);
    out["arc_hold"] = words_of<arc_hold>(to_text);
    out["caution_id"] = words_of<caution_id>(to_text);
    out["clamp_cure"] = words_of<clamp_cure_kind>(to_text);
    out["condition_id"] = words_of<condition_id>(to_text);
    out["current_kind"] = words_of<output_current>(to_text);
    out["deciding_fact"] = words_of<deciding_fact>(to_text);
    out["droop_shape"] = words_of<droop_shape>(to_text);
    out["edge_end"] = words_of<edge_end>(to_text);
    out["effort"] = words_of<remedy_effort>(to_text);
    out["finding_id"] = words_of<finding_id>(to_text);
    out["flag"] = words_of<range_flag>(to_text, "outside its range");
    out["flag_id"] = words_of<range_flag>(id_text);
    out["grip_outlook"] = words_of<grip_outlook>(to_text);
    out["joint_air"] = words_of<joint_air>(to_text);
    out["joint_motion"] = words_of<joint_motion>(to_text);
    out["lay"] = words_of<lay>(to_text);
    out["operating_outcome"] = words_of<operating_outcome>(to_text);
    out["outcome"] = words_of<loop_outcome>(outcome_word);
    out["place"] = words_of<part_place>(to_text);
    out["polarity"] = words_of<electrode_polarity>(to_text);
    out["process"] = words_of<process>(to_text);
    out["reading_quantity"] = words_of<reading_quantity>(to_text);
    out["remedy_id"] = words_of<remedy_id>(to_text);
    out["severity"] = words_of<finding_severity>(to_text);
    out["shock_hazard"] = words_of<shock_hazard>(to_text);
    out["source_kind"] = words_of<source_kind>(to_text);
    out["supply_kind"] = words_of<supply_kind>(to_text);
    out["surface_state"] = words_of<surface_state>(to_text);
    out["verdict"] = words_of<verdict>(to_text);
    out["verdict_id"] = words_of<verdict>(id_text);
    out["way_kind"] = words_of<way_kind>(to_text);
    out["weld_id"] = words_of<weld_id>(to_text);
    out["wire_feeding"] = words_of<wire_feeding>(to_text);
    return out;
}

}  // namespace

int main(int count, char** words)
{
    if (count != 2) {
        std::cerr << "usage: write_reports FOLDER\n";
        return 2;
    }
    try {
        const std::filesystem::path folder = words[1];
        std::filesystem::create_directories(folder);
        write_file(folder / "words.json", all_words().dump(2) + "\n");
        int number = 0;
        const auto write = [&](const test::assessed_station& s, const report_request& asked) {
            write_file(folder / ("report_" + std::to_string(++number) + ".json"),
                       report_json(s.is, s.found, s.remedies, asked));
        };
        for (const test::assessed_station& s : test::all_stations()) write(s, {.answers = s.answers});
        using namespace std::chrono_literals;
        for (const test::assessed_station& s : test::stations_with_all_keys())
            write(s, {.answers = s.answers,
                      .units = {.temperatures = "degF", .lengths = shown_lengths::feet},
                      .date = 2026y / 11 / 26});
        std::cout << number << " reports\n";
    } catch (const std::exception& e) {
        std::cerr << e.what() << '\n';
        return 1;
    }
}
