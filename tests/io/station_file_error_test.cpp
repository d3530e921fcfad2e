// What is wrong with a station file, where it is, and what was most likely meant.
#include <filesystem>
#include <fstream>
#include <ostream>
#include <string>
#include <string_view>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/io/station/station_file.hpp>
#include <weldloop/io/station/toml_guard.hpp>

using namespace weldloop;
using testing::HasSubstr;
using weldloop::test::small_station;
using weldloop::test::with;

namespace {

/// One fault: a piece of the small station and what stands there instead.
struct fault {
    std::string_view old_piece, new_piece;
    std::size_t line, column;
    std::string_view reason;   // part of it
    std::string_view nearest;  // all of it
};
std::ostream& operator<<(std::ostream& out, const fault& f)
{
    return out << "\"" << f.old_piece << "\" -> \"" << f.new_piece << "\"";
}

constexpr fault faults[] = {
    // keys
    {"length", "lenght", 11, 1, "unknown key \"lenght\" in a cable (part 1)", "length"},
    {"process", "proces", 3, 1, "unknown key \"proces\" in [job]", "process"},
    {"air", "air_temperature", 7, 1, "unknown key", "air"},
    {"[surroundings]", "[surrounding]", 6, 2, "unknown key \"surrounding\" in the file", "surroundings"},
    {"[[path]]", "[[paths]]", 8, 3, "unknown key \"paths\"", "path"},
    {"name = \"Bench\"", "", 1, 1, "lacks the key \"name\"", ""},
    {"length = \"50 ft\"\n", "", 8, 1, "a cable (part 1) lacks the key \"length\"", ""},
    {"part = \"cable\"\n", "", 8, 1, "part 1 lacks the key \"part\"", ""},
    {"current = \"240 A\"\n", "", 2, 1, "[job] lacks the key \"current\"", ""},
    {"current = \"240 A\"\n", "current = \"240 A\"\nwaveform = \"pulse\"\n", 5, 12, "direct, alternating, pulsed",
     "pulsed"},
    {"current = \"240 A\"\n", "current = \"240 A\"\nfrequency = \"50 Hz\"\n", 5, 13,
     "goes with waveform = \"alternating\"", ""},
    {"current = \"240 A\"\n", "current = \"240 A\"\nwaveform = \"pulsed\"\n", 4, 11, "leave it out", ""},
    {"name = \"Bench\"", "name = \"Bench\"\nintermittent = \"arc\"", 2, 16, "\"intermittent\" cannot be \"arc\"", ""},
    {"name = \"Bench\"", "name = \"Bench\"\nintermittent = \"cabel 1\"", 2, 16, "cannot be \"cabel 1\"", "cable 1"},
    {"name = \"Bench\"", "name = \"Bench\"\nintermittent = 3", 2, 16, "is a bare number", ""},
    {"current = \"240 A\"\n", "current = \"240 A\"\nrise_time = \"1 ms\"\n", 5, 13, "goes with waveform = \"pulsed\"",
     ""},
    {"current = \"240 A\"\n",
     "waveform = \"pulsed\"\nbase = \"80 A\"\npeak = \"350 A\"\nbase_time = \"6 ms\"\npeak_time = \"4 "
     "ms\"\nrise_time = \"2 s\"\n",
     9, 13, "allowed: from 0 s to 1 s", ""},
    {"length = \"50 ft\"", "length = \"50 ft\"\nsteel = \"within the coil\"", 12, 9, "goes with lay = \"coiled\"", ""},
    {"length = \"50 ft\"", "length = \"50 ft\"\nlay = \"coiled\"\nsteel = \"round the lead\"", 13, 9,
     "under or within its coil", ""},
    {"length = \"50 ft\"", "length = \"50 ft\"\nsteel = \"iron\"", 12, 9, "\"steel\" cannot be \"iron\"", ""},
    {"onto = \"mild steel\"\n", "", 14, 1, "lacks the key \"onto\"", ""},
    {"rated = \"300 A\"\n", "", 14, 1, "lacks the key \"rated\"", ""},
    {"rated = \"300 A\"", "size = \"1 AWG\"", 17, 8, "takes \"rated\"", "rated"},
    // kinds of value
    {"\"50 ft\"", "50", 11, 10, "\"length\" is a bare number; write a text with its unit, such as \"50 ft\"", ""},
    {"\"50 ft\"", "[\"50 ft\"]", 11, 10, "is an array", ""},
    {"\"240 A\"", "true", 4, 11, "is true or false", ""},
    {"\"32 degC\"", "1979-05-27", 7, 7, "is a date or time", ""},
    {"\"mild steel\"", "{a = 1}", 18, 8, "is a table", ""},
    {"name = \"Bench\"", "name = 3", 1, 8, "is a bare number; write a text in quotes", ""},
    {"[job]\nprocess = \"gmaw\"\ncurrent = \"240 A\"\nduty = \"60 %\"", "job = 3", 2, 7,
     "\"job\" is a bare number; write a table: [job]", ""},
    {"part = \"cable\"", "part = \"wire gun\"", 9, 8, "\"part\" cannot be \"wire gun\"", "gun"},
    {"part = \"work clamp\"", "part = \"work connection\"", 15, 8, "\"part\" cannot be", "work clamp"},
    // units, at the character that does not fit
    {"\"50 ft\"", "\"50 fet\"", 11, 14, "\"length\" cannot be \"50 fet\"", "ft"},
    {"\"240 A\"", "\"240 V\"", 4, 16, "in one of A, mA, kA", ""},
    {"\"240 A\"", "\"240\"", 4, 15, "a unit after the number", ""},
    {"\"240 A\"", "\"about 240 A\"", 4, 12, "finite number with its unit", ""},
    {"\"240 A\"", "\"\"", 4, 12, "a number with its unit", ""},
    {"\"240 A\"", "'240 amps'", 4, 16, "in one of A, mA, kA", "A"},
    {"\"32 degC\"", "\"32 C\"", 7, 11, "a temperature in one of degC, degF, K", "degC"},
    {"\"32 degC\"", "\"86 F\"", 7, 11, "a temperature in one of degC, degF, K", "degF"},
    {"\"50 ft\"", "\"15 '\"", 11, 14, "in one of m, mm", "ft"},
    {"gmaw", "MIG", 3, 11, "\"process\" cannot be \"MIG\"", "gmaw"},
    {"gmaw", "stick", 3, 11, "\"process\" cannot be \"stick\"", "smaw"},
    {"gmaw", "xyz", 3, 11, "\"process\" cannot be \"xyz\"", ""},
    {"\"work clamp\"", "\"ground clamp\"", 15, 8, "\"part\" cannot be", "work clamp"},
    {"\"60 %\"", "\"0.6\"", 5, 12, "a unit after the number: %", ""},
    {"\"2/0 AWG\"", "\"2/0 AVG\"", 10, 13, "an aught size in one of AWG", "AWG"},
    {"\"60 %\"", "\"60 per cent\"", 5, 12, "a share in one of %", "%"},
    {"\"240 A\"", "\"nan A\"", 4, 12, "finite number", ""},
    {"\"240 A\"", "\"1e999 A\"", 4, 12, "a number a computer can hold", ""},
    // words
    {"gmaw", "gmwa", 3, 11, "\"process\" cannot be \"gmwa\"; it is one of: smaw, gmaw, fcaw, gtaw, saw", "gmaw"},
    {"\"cable\"", "\"cabel\"", 9, 8, "\"part\" cannot be \"cabel\"", "cable"},
    {"mild steel", "mild-steel", 18, 8, "\"onto\" cannot be", "mild steel"},
    {"spring clamp", "springs", 16, 9, "\"clamp\" cannot be", "spring clamp"},
    {"onto = \"mild steel\"", "onto = \"mild steel\"\nsurface = \"rusty\"", 19, 11, "\"surface\" cannot be",
     "light rust"},
    {"air = \"32 degC\"", "coil_turns = 8", 7, 14, "goes with lay = \"coiled\"", ""},
    {"air = \"32 degC\"", "lay = \"coiled\"\nbundled_leads = 8", 8, 17, "goes with lay = \"bundled\"", ""},
    {"air = \"32 degC\"", "lay = \"bundled\"\nbundled_leads = 201", 8, 17, "bundled_leads", ""},
    {"air = \"32 degC\"", "lay = \"coil\"", 7, 7, "\"lay\" cannot be", "coiled"},
    // values that cannot be
    {"\"50 ft\"", "\"0 ft\"", 11, 10, "cannot be \"0 ft\"; allowed: above 0 m to 1000 m", ""},
    {"\"50 ft\"", "\"-50 ft\"", 11, 10, "cannot be \"-50 ft\"", ""},
    {"\"50 ft\"", "\"50 km\"", 11, 10, "cannot be \"50 km\"", ""},
    {"\"240 A\"", "\"240 kA\"", 4, 11, "allowed: above 0 A to 5000 A", ""},
    {"\"60 %\"", "\"160 %\"", 5, 8, "cannot be \"160 %\"", ""},
    {"\"60 %\"", "\"60\"", 5, 11, "cannot be \"60\"", ""},
    {"\"60 %\"", "\"0 %\"", 5, 8, "cannot be \"0 %\"", ""},
    {"duty = \"60 %\"", "on = \"12 min\"\nperiod = \"10 min\"", 5, 6, "on-time is 720 s", ""},
    {"duty = \"60 %\"", "on = \"6 min\"", 2, 1, "lacks the key \"period\"", ""},
    {"duty = \"60 %\"", "period = \"10 min\"", 5, 10, "needs \"on\" or \"duty\"", ""},
    {"duty = \"60 %\"", "duty = \"60 %\"\non = \"6 min\"", 6, 6, "say the same thing", ""},
    {"\"60 %\"", "\"continuous\"\nperiod = \"10 min\"", 6, 10, "has no period", ""},
    {"\"32 degC\"", "\"-300 degC\"", 7, 7, "cannot be \"-300 degC\"", ""},
    {"\"32 degC\"", "\"320 degC\"", 7, 7, "allowed: from -60 degC to 100 degC", ""},
    {"\"2/0 AWG\"", "\"5/0 AWG\"", 10, 8, "allowed: 1 to 4", ""},
    {"\"2/0 AWG\"", "\"40 AWG\"", 10, 8, "lead size is 40 AWG", ""},
    {"\"300 A\"", "\"30 A\"", 17, 9, "rated current is 30 A", ""},
    {"onto = \"mild steel\"", "onto = \"mild steel\"\nlive_jaws = 3", 19, 13,
     "\"live_jaws\" cannot be 3; allowed: from 1 to 2", ""},
    {"onto = \"mild steel\"", "onto = \"mild steel\"\nlive_jaws = \"2\"", 19, 13, "is a text; write a whole number",
     ""},
    {"onto = \"mild steel\"", "onto = \"mild steel\"\nforce = \"1000 kN\"", 19, 9, "cannot be \"1000 kN\"", ""},
    {"length = \"50 ft\"", "length = \"50 ft\"\nmissing_strands = \"100 %\"\ndamaged_length = \"1 m\"", 12, 19,
     "to below 1", ""},
    {"length = \"50 ft\"", "length = \"50 ft\"\nmissing_strands = \"10 %\"", 12, 19, "needs \"damaged_length\"", ""},
    {"length = \"50 ft\"", "length = \"50 ft\"\ndamaged_length = \"1 m\"", 12, 18, "needs \"missing_strands\"", ""},
    {"length = \"50 ft\"", "length = \"50 ft\"\nmissing_strands = \"10 %\"\ndamaged_length = \"16 m\"", 13, 18,
     "longer than the lead", ""},
    {"length = \"50 ft\"", "length = \"50 ft\"\nconductor_diameter = \"5 mm\"", 12, 22, "too small for 2/0 AWG", ""},
    {"length = \"50 ft\"", "length = \"50 ft\"\noverall_diameter = \"5 mm\"", 12, 20, "no thickness", ""},
    // how the trade writes numbers
    {"\"60 %\"", "\"120 %\"", 5, 8, "allowed: above 0 % to 100 %", ""},
    {"\"60 %\"", "\"0.6\"", 5, 12, "write 60 %", ""},
    {"\"50 ft\"", "\"9,1 m\"", 11, 12, "write 9.1 m", ""},
    {"onto = \"mild steel\"", "onto = \"mild steel\"\nsurface = \"sandy\"", 19, 11,
     "\"mill scale\", \"mill scale, bitten through\", \"spatter-covered\"", ""},
    // a piece of work
    {"part = \"work clamp\"",
     "part = \"workpiece\"\nmetal = \"mild steel\"\nmass = \"3 kg\"\nthickness = \"3 mm\"\npieces_per_hour = \"5 "
     "min\"\n[[path]]\npart = \"work clamp\"",
     19, 19, "how long a piece stays is \"stays\"", "stays"},
    {"part = \"work clamp\"",
     "part = \"workpiece\"\nmetal = \"mild steel\"\nmass = \"3 kg\"\nthickness = \"3 mm\"\nstays = "
     "12\n[[path]]\npart = \"work clamp\"",
     19, 9, "how many follow each other is \"pieces_per_hour\"", "pieces_per_hour"},
    {"part = \"work clamp\"",
     "part = \"workpiece\"\nmetal = \"mild steel\"\nmass = \"3 kg\"\nthickness = \"3 mm\"\nstays = \"10 "
     "min\"\npieces_per_hour = 12\n[[path]]\npart = \"work clamp\"",
     20, 19, "12 an hour leave 5 min for each", ""},
    // what the process is welded with
    {"part = \"arc\"", "part = \"holder\"\nrated = \"300 A\"\n[[path]]\npart = \"arc\"", 13, 8,
     "process \"gmaw\" is welded with a gun", "gun"},
    {"part = \"arc\"", "part = \"tig torch\"\nlength = \"4 m\"\n[[path]]\npart = \"arc\"", 13, 8,
     "process \"gmaw\" is welded with a gun", "gun"},
    {"gmaw\"\ncurrent = \"240 A\"\nduty = \"60 %\"\n[surroundings]\nair = \"32 degC\"\n",
     "smaw\"\ncurrent = \"240 A\"\n[[path]]\npart = \"gun\"\nlength = \"3 m\"\n", 6, 8,
     "process \"smaw\" is welded with a holder", "holder"},
    // names
    {"\"Bench\"", "\"\"", 1, 8, "is empty", ""},
    {"\"Bench\"", "\"a\\u0007b\"", 1, 8, "control character", ""},
    {"\"Bench\"", "\"0123456789012345678901234567890123456789012345678901234567890123456789012345678901\"", 1, 8,
     "longer than 80", ""},
    {"part = \"cable\"", "part = \"cable\"\nname = \"work clamp 3\"", 10, 8, "two parts are called \"work clamp 3\"",
     ""},
    {"part = \"work clamp\"", "part = \"work clamp\"\nname = \"cable 1\"", 16, 8, "the other one stands in line 8", ""},
    // the path
    {"part = \"arc\"", "part = \"coupling\"\nsize = \"50 mm2\"", 8, 1, "the path has no arc", ""},
    {"part = \"cable\"\nsize = \"2/0 AWG\"\nlength = \"50 ft\"", "part = \"arc\"\nname = \"first\"", 12, 8,
     "a second arc; the first one stands in line 9; a station has one, another welder on the same work is an [[other]]",
     ""},
    {"[[path]]\npart = \"cable\"\nsize = \"2/0 AWG\"\nlength = \"50 ft\"\n", "", 9, 8, "at the end of the path", ""},
    // TOML
    {"\"50 ft\"", "\"50 ft", 11, 16, "not TOML", ""},
    {"[job]", "[job", 2, 5, "not TOML", ""},
    {"[job]", "[=job]", 2, 2, "this character cannot stand here", ""},
    {"[[path]]", "[[ +]]", 8, 4, "this character cannot stand here", ""},
    {"[job]", "[\r\njob]", 2, 2, "this character cannot stand here", ""},
    {"[job]", "[]", 2, 2, "not TOML", ""},
    {"\"50 ft\"", "[ }", 11, 12, "this character cannot stand here", ""},
    {"[[path]]", "[path]", 12, 1, "not TOML", ""},
    {"duty = \"60 %\"", "duty = \"60 %\"\nduty = \"50 %\"", 6, 8, "not TOML", ""},
    {"Bench", "Ben\xFF", 1, 11, "not TOML", ""},
    // TOML 1.0.0, "Keys": bare keys are ASCII; toml++ 3.3 leaves defined ground at some of these
    {"[job]", "[\xD0\xB6ob]", 2, 2, "this character cannot stand here", ""},
    {"duty = \"60 %\"", "dut\xC3\xA9 = \"60 %\"", 5, 4, "beyond ASCII", ""},
    {"\"50 ft\"",
     "\xE2\x80\x9C"
     "50 ft\xE2\x80\x9D",
     11, 10, "beyond ASCII", ""},
    {"[job]", "[job\n\xC3\xA9 = 1", 2, 5, "not TOML: Error while parsing table header", ""},  // the first fault
};

station_file_error error_of(std::string_view text)
{
    try {
        static_cast<void>(station_from_toml(text, "bench.toml"));
    } catch (const station_file_error& e) {
        return e;
    }
    throw std::logic_error("the text was taken for a station");
}

}  // namespace

TEST(StationFileError, NamesPlaceReasonAndNearestWord)
{
    for (const fault& f : faults) {
        SCOPED_TRACE(testing::PrintToString(f));
        const station_file_error e = error_of(with(small_station, f.old_piece, f.new_piece));
        EXPECT_EQ(e.line(), f.line) << e.what();
        EXPECT_EQ(e.column(), f.column) << e.what();
        EXPECT_THAT(e.reason(), HasSubstr(f.reason));
        EXPECT_EQ(e.nearest(), f.nearest) << e.what();
    }
}

TEST(StationFileError, ReadsLikeACompilersMessage)
{
    const station_file_error e = error_of(with(small_station, "gmaw", "gmwa"));
    EXPECT_STREQ(e.what(), "bench.toml:3:11: \"process\" cannot be \"gmwa\"; it is one of: smaw, gmaw, fcaw, gtaw, "
                           "saw; nearest: \"gmaw\"");
    EXPECT_EQ(e.id(), error_id::station_file);
    EXPECT_EQ(e.file(), "bench.toml");
    const error& base = e;
    EXPECT_STREQ(base.what(), e.what());
}

TEST(StationFileError, CountsColumnsInCharacters)
{
    const station_file_error e =
        error_of(with(small_station, "length = \"50 ft\"", "  \"length\" = \"50 \xC3\xA9\xC3\xA9\""));
    EXPECT_EQ(e.line(), 11U);
    EXPECT_EQ(e.column(), 18U);
    // the byte order mark is no column
    const station_file_error marked =
        error_of("\xEF\xBB\xBF" + with(small_station, "name = \"Bench\"", "allowed_drop = \"4 X\"\nname = \"Bench\""));
    EXPECT_EQ(marked.line(), 1U);
    EXPECT_EQ(marked.column(), 19U);
}

TEST(StationFileError, PointsAtTheBeginningOfATextWithEscapes)
{
    EXPECT_EQ(error_of(with(small_station, "\"50 ft\"", "\"5\\u0030 fet\"")).column(), 10U);
    EXPECT_EQ(error_of(with(small_station, "\"50 ft\"", "\"\"\"\n50 fet\"\"\"")).column(), 10U);
}

TEST(StationFileError, KeepsControlCharactersOutOfMessages)
{
    const station_file_error e = error_of(with(small_station, "gmaw", "\\u001b[31m"));
    EXPECT_THAT(e.what(), HasSubstr("\"?[31m\""));
    try {
        static_cast<void>(station_from_toml("", "a\x1b[2Jb.toml"));
        FAIL();
    } catch (const station_file_error& named) {
        EXPECT_EQ(named.file(), "a?[2Jb.toml");
    }
}

TEST(StationFileError, IsRaisedForFilesThatCannotBeRead)
{
    const auto message = [](const std::filesystem::path& file) -> std::string {
        try {
            static_cast<void>(read_station(file));
        } catch (const station_file_error& e) {
            EXPECT_EQ(e.line(), 0U);
            return e.what();
        }
        return "";
    };
    EXPECT_EQ(message("no such file.toml"), "no such file.toml: there is no such file");
    EXPECT_THAT(message(std::filesystem::temp_directory_path()), HasSubstr("is a folder"));
    EXPECT_THAT(message("/dev/zero"), HasSubstr("a pipe or a device"));
    EXPECT_THAT(message("/dev/null"), HasSubstr("a pipe or a device"));
}

TEST(StationFileError, IsRaisedForHostileFiles)
{
    EXPECT_THAT(error_of(std::string(station_file_limits::bytes + 1, '#')).reason(),
                HasSubstr("larger than 1048576 bytes"));

    // a table in a table for each dot
    std::string deep = "a";
    for (int i = 0; i < 300000; ++i) deep += ".a";
    EXPECT_THAT(error_of(deep + " = 1\n").reason(), HasSubstr("too many dots"));
    EXPECT_THAT(error_of("[" + deep + "]\n").reason(), HasSubstr("too many dots"));
    EXPECT_THAT(error_of("x = {p = \"\"\"a\"\"\"\", " + deep + " = 1}\n").reason(), HasSubstr("too many dots"));
    EXPECT_THAT(error_of("x = {p = '''a''''', " + deep + " = 1}\n").reason(), HasSubstr("too many dots"));
    EXPECT_THAT(error_of("x = \"\\\"\", " + deep + "\n").reason(), HasSubstr("too many dots"));
    // dots in texts and comments do no harm
    const std::string dots(1000, '.');
    EXPECT_NO_THROW(
        static_cast<void>(station_from_toml("# " + dots + " ' \"\n" + std::string(small_station), "a.toml")));

    EXPECT_THAT(error_of("a = " + std::string(100000, '[')).reason(), HasSubstr("not TOML"));

    std::string many(small_station);
    for (std::size_t i = 0; i < station_file_limits::parts; ++i) many += "[[path]]\npart = \"lug\"\nsize = \"1 AWG\"\n";
    const station_file_error e = error_of(many);
    EXPECT_THAT(e.reason(), HasSubstr("more than 1000 parts"));
    EXPECT_GT(e.line(), 3000U);
}

// What no crimp is made for was taken, and refused without its line when the station was solved.
TEST(StationFileError, APartOfNoCrimpsSizeIsRefusedAtItsSize)
{
    for (const char* part : {"lug", "coupling"})
        for (const char* size : {"1000 mm2", "0.1 mm2"}) {
            const station_file_error e =
                error_of(std::string(small_station) + "[[path]]\npart = \"" + part + "\"\nsize = \"" + size + "\"\n");
            EXPECT_THAT(e.reason(), HasSubstr("conductor area")) << part << ' ' << size;
            EXPECT_EQ(e.column(), 8U) << part << ' ' << size;
        }
}
