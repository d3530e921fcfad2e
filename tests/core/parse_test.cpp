// Text with a unit: every unit, exact positions of faults, any text at all.
#include <array>
#include <cmath>
#include <cstddef>
#include <random>
#include <string>
#include <string_view>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/parse.hpp>

#include "core/every_quantity.hpp"
#include "support/near.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;

namespace {

struct fault {
    std::size_t position = 999;
    std::string allowed = "no fault";
};

template <class T>
fault fault_of(const std::string& text)
{
    try {
        (void)wl::parse<T>(text);
    } catch (const wl::bad_text_error& e) {
        EXPECT_EQ(e.id(), wl::error_id::bad_text);
        return {e.position(), e.allowed()};
    }
    return {};
}

template <class T>
std::size_t position_of(const std::string& text)
{
    return fault_of<T>(text).position;
}

}  // namespace

TEST(Parse, ReadsWhatPeopleWrite)
{
    EXPECT_EQ(wl::parse<wl::current>("260 A"), 260_A);
    EXPECT_EQ(wl::parse<wl::length>("50 ft"), 50_ft);
    EXPECT_EQ(wl::parse<wl::conductor_size>("2/0 AWG"), wl::aught(2));
    EXPECT_EQ(wl::parse<wl::conductor_size>("70 mm2"), wl::square_mm(70));
    EXPECT_EQ(wl::parse<wl::conductor_size>("250 kcmil"), wl::kcmil(250));
    EXPECT_EQ(wl::parse<wl::temperature>("95 degF"), 95_degF);
    EXPECT_EQ(wl::parse<wl::duty_fraction>("60 %"), wl::duty_fraction(0.6));
    EXPECT_EQ(wl::parse<wl::duration>("6 min"), 6_min);
}

TEST(Parse, ForgivesSpacesAndSigns)
{
    for (const std::string text : {"260A", "260 A", "  260   A  ", "260\tA", "+260 A", "2.6e2 A", "0.26e3A", "260. A"})
        EXPECT_EQ(wl::parse<wl::current>(text), 260_A) << text;
    EXPECT_EQ(wl::parse<wl::temperature>("-10 degC"), wl::temperature::celsius(-10));
    EXPECT_EQ(wl::parse<wl::temperature>("300 K").in_kelvin(), 300.0);
    EXPECT_EQ(wl::parse<wl::conductor_size>("2/0"), wl::aught(2));
    EXPECT_EQ(wl::parse<wl::conductor_size>("2/0AWG"), wl::aught(2));
    EXPECT_EQ(wl::parse<wl::conductor_size>("4 AWG"), wl::awg(4));
    EXPECT_EQ(wl::parse<wl::fraction>("0 %"), wl::fraction(0.0));
    EXPECT_EQ(wl::parse<wl::torque>("30 lbf ft"), 30_lbf_ft);
    EXPECT_EQ(wl::parse<wl::current>("-5 A").value(), -5.0);  // whether it can be is for its user to say
}

TEST(Parse, ReadsBackEveryUnitOfTheTable)
{
    int units = 0;
    weldloop::test::for_every_quantity([&]<class Q>(Q, std::string_view) {
        for (const wl::detail::unit_row& row : wl::detail::unit_table) {
            if (row.kind != wl::detail::kind_of<Q>) continue;
            ++units;
            for (const double number : {1.0, 0.1, -2.5, 123.456, 1.7e-12, 6.02e23}) {
                const Q written = wl::in_si<Q>(number * row.in_si);
                const std::string text = wl::to_text(written, wl::unit_of<Q>::at_run_time(row.name), 17);
                EXPECT_NEAR_REL(wl::parse<Q>(text).value(), written.value(), 3e-16) << text;
            }
        }
    });
    EXPECT_EQ(units, static_cast<int>(wl::detail::unit_table.size()));
}

TEST(Parse, PointsAtTheFault)
{
    EXPECT_EQ(position_of<wl::current>(""), 0U);
    EXPECT_EQ(position_of<wl::current>("   "), 3U);
    EXPECT_EQ(position_of<wl::current>("A"), 0U);
    EXPECT_EQ(position_of<wl::current>("  amps"), 2U);
    EXPECT_EQ(position_of<wl::current>("260"), 3U);
    EXPECT_EQ(position_of<wl::current>("260 V"), 4U);
    EXPECT_EQ(position_of<wl::current>("260  amps"), 5U);
    EXPECT_EQ(position_of<wl::current>("260 A x"), 4U);
    EXPECT_EQ(position_of<wl::current>("2,6 A"), 1U);
    EXPECT_EQ(position_of<wl::current>("1e A"), 1U);
    EXPECT_EQ(position_of<wl::current>("0x10 A"), 1U);
    EXPECT_EQ(position_of<wl::current>("++260 A"), 0U);
    EXPECT_EQ(position_of<wl::current>("+-260 A"), 0U);
    EXPECT_EQ(position_of<wl::current>("--260 A"), 0U);
    EXPECT_EQ(position_of<wl::current>("nan A"), 0U);
    EXPECT_EQ(position_of<wl::current>(" inf A"), 1U);
    EXPECT_EQ(position_of<wl::current>("-infinity A"), 0U);
    EXPECT_EQ(position_of<wl::current>("1e400 A"), 0U);
    EXPECT_EQ(position_of<wl::length>(" 1e308 km"), 1U);  // finite in kilometres only
    EXPECT_EQ(position_of<wl::conductor_size>("2/0 mm2"), 4U);
    EXPECT_EQ(position_of<wl::conductor_size>("70 mm"), 3U);
    EXPECT_EQ(position_of<wl::conductor_size>("70"), 2U);
    EXPECT_EQ(position_of<wl::temperature>("95 deg"), 3U);
    EXPECT_EQ(position_of<wl::fraction>("60 A"), 3U);
}

TEST(Parse, NamesTheNearestUnit)
{
    EXPECT_THAT(fault_of<wl::duration>("6 mim").allowed, testing::EndsWith("nearest: min"));
    EXPECT_THAT(fault_of<wl::temperature>("95 degf").allowed, testing::EndsWith("nearest: degF"));
    EXPECT_THAT(fault_of<wl::conductor_size>("2 awg").allowed, testing::EndsWith("nearest: AWG"));
    EXPECT_THAT(fault_of<wl::current>("260").allowed, testing::StartsWith("a unit after the number: A, mA, kA"));
}

// What the trade writes leads to the unit it means; what is near nothing leads nowhere.
TEST(Parse, KnowsWhatTheTradeWrites)
{
    using testing::EndsWith, testing::HasSubstr, testing::Not;
    EXPECT_THAT(fault_of<wl::temperature>("86 F").allowed, EndsWith("nearest: degF"));
    EXPECT_THAT(fault_of<wl::temperature>("30 C").allowed, EndsWith("nearest: degC"));
    EXPECT_THAT(fault_of<wl::temperature>("30 \xC2\xB0"
                                          "c")
                    .allowed,
                EndsWith("nearest: degC"));
    EXPECT_THAT(fault_of<wl::current>("280 amps").allowed, EndsWith("nearest: A"));
    EXPECT_THAT(fault_of<wl::length>("15 '").allowed, EndsWith("nearest: ft"));
    EXPECT_THAT(fault_of<wl::length>("15 \"").allowed, EndsWith("nearest: in"));
    EXPECT_THAT(fault_of<wl::torque>("30 ft-lbs").allowed, EndsWith("nearest: lbf ft"));
    EXPECT_THAT(fault_of<wl::force>("40 lbs").allowed, EndsWith("nearest: lbf"));
    EXPECT_THAT(fault_of<wl::mass>("40 lbs").allowed, EndsWith("nearest: lb"));
    EXPECT_THAT(fault_of<wl::fraction>("60 percent").allowed, EndsWith("nearest: %"));
    EXPECT_THAT(fault_of<wl::conductor_size>("250 MCM").allowed, EndsWith("nearest: kcmil"));
    for (const char* text : {"280 V", "280 x", "280 zzzzzz"})
        EXPECT_THAT(fault_of<wl::current>(text).allowed, Not(HasSubstr("nearest"))) << text;
    // two are equally near
    EXPECT_THAT(fault_of<wl::temperature>("95 deg").allowed, Not(HasSubstr("nearest")));
}

// How sizes are written on reels and in catalogues: 00 is 2/0 (ASTM B258), # a number of the gauge.
TEST(Parse, TakesGaugesAsTheyAreWrittenOnReels)
{
    const auto size = [](const char* text) { return wl::parse<wl::conductor_size>(text); };
    EXPECT_EQ(size("00 AWG"), wl::aught(2));
    EXPECT_EQ(size("0 AWG"), wl::aught(1));
    EXPECT_EQ(size("0000 AWG"), wl::aught(4));
    EXPECT_EQ(size("000AWG"), wl::aught(3));
    EXPECT_EQ(size("#2"), wl::awg(2));
    EXPECT_EQ(size("# 4"), wl::awg(4));
    EXPECT_EQ(size("#2 AWG"), wl::awg(2));
    EXPECT_EQ(size("#2/0"), wl::aught(2));
    EXPECT_EQ(size("#2/0 AWG"), wl::aught(2));
    EXPECT_EQ(size("#00"), wl::aught(2));
    EXPECT_THROW((void)size("00000 AWG"), wl::out_of_range_error);
    EXPECT_THROW((void)size("#70 mm2"), wl::bad_text_error);
    EXPECT_THROW((void)size("#"), wl::bad_text_error);
    EXPECT_THROW((void)size("00"), wl::bad_text_error);
    EXPECT_EQ(position_of<wl::conductor_size>("#70 mm2"), 4U);
}

// 1 in = 25.4 mm, 1 ft = 12 in (international, 1959)
TEST(Parse, TakesFractionsOfInches)
{
    const auto mm = [](const char* text) { return wl::number_in(wl::parse<wl::length>(text), "mm"); };
    EXPECT_DOUBLE_EQ(mm("1/8 in"), 3.175);
    EXPECT_DOUBLE_EQ(mm("1 1/2 in"), 38.1);
    EXPECT_DOUBLE_EQ(mm("3/16in"), 4.7625);
    EXPECT_DOUBLE_EQ(mm("1/2 ft"), 152.4);
    EXPECT_THROW((void)mm("1/0 in"), wl::bad_text_error);
    EXPECT_THROW((void)mm("1/8 mm"), wl::bad_text_error);
    EXPECT_THROW((void)mm("1.5/8 in"), wl::bad_text_error);
    EXPECT_THROW((void)mm("1/8"), wl::bad_text_error);
    EXPECT_THROW((void)wl::parse<wl::current>("1/2 A"), wl::bad_text_error);
}

TEST(Parse, TakesTheSpeedOfAWire)
{
    EXPECT_DOUBLE_EQ(wl::parse<wl::speed>("300 in/min").value(), 300 * 0.0254 / 60);
    EXPECT_DOUBLE_EQ(wl::parse<wl::speed>("7.5 m/min").value(), 0.125);
    EXPECT_THAT(fault_of<wl::speed>("300 ipm").allowed, testing::EndsWith("nearest: in/min"));
    EXPECT_THAT(fault_of<wl::speed>("300 inch/min").allowed, testing::EndsWith("nearest: in/min"));
}

TEST(Parse, SaysHowADecimalIsWritten)
{
    using testing::HasSubstr, testing::Not;
    EXPECT_THAT(fault_of<wl::length>("9,1 m").allowed, HasSubstr("write 9.1 m"));
    EXPECT_THAT(fault_of<wl::current>("-2,65A").allowed, HasSubstr("write -2.65 A"));
    EXPECT_EQ(position_of<wl::length>("9,1 m"), 1U);
    // three digits may be thousands
    EXPECT_THAT(fault_of<wl::current>("1,200 A").allowed, HasSubstr("write 1200 A or 1.2 A"));
    EXPECT_THAT(fault_of<wl::current>("1,A").allowed, Not(HasSubstr("write")));
    EXPECT_THAT(fault_of<wl::conductor_size>("2,5 mm2").allowed, HasSubstr("write 2.5 mm2"));
}

// A share is written in percent, whatever is asked for; a bare number could be either.
TEST(Parse, SaysHowAShareIsWritten)
{
    using testing::HasSubstr;
    EXPECT_THAT(fault_of<wl::duty_fraction>("0.6").allowed, HasSubstr("60 %"));
    EXPECT_THAT(fault_of<wl::duty_fraction>("60").allowed, HasSubstr("60 %"));
    EXPECT_THAT(fault_of<wl::fraction>("1").allowed, HasSubstr("1 % or 100 %"));
    const auto allowed = [](const char* text) -> std::string {
        try {
            (void)wl::parse<wl::duty_fraction>(text);
        } catch (const wl::out_of_range_error& e) {
            return e.allowed();
        }
        return "taken";
    };
    EXPECT_EQ(allowed("120 %"), "above 0 % to 100 %");
    EXPECT_EQ(allowed("0 %"), "above 0 % to 100 %");
    EXPECT_EQ(allowed("100 %"), "taken");
}

TEST(Parse, RefusesValuesThatCannotBe)
{
    EXPECT_THROW((void)wl::parse<wl::temperature>("-300 degC"), wl::out_of_range_error);
    EXPECT_THROW((void)wl::parse<wl::duty_fraction>("120 %"), wl::out_of_range_error);
    EXPECT_THROW((void)wl::parse<wl::duty_fraction>("60"), wl::bad_text_error);
    EXPECT_THROW((void)wl::parse<wl::fraction>("0.6"), wl::bad_text_error);
    EXPECT_THROW((void)wl::parse<wl::fraction>("1"), wl::bad_text_error);  // one percent, or all
    EXPECT_THROW((void)wl::parse<wl::conductor_size>("9/0"), wl::out_of_range_error);
    EXPECT_THROW((void)wl::parse<wl::conductor_size>("2.5 AWG"), wl::out_of_range_error);
    EXPECT_THROW((void)wl::parse<wl::conductor_size>("-70 mm2"), wl::out_of_range_error);
}

// Any text either is a finite value or is refused by one of the library's errors. Reproducible: the seed is fixed.
TEST(Parse, AnyTextIsAValueOrARefusal)
{
    constexpr std::array<std::string_view, 26> pieces{"260", "A", " ", "ft", "2/0", "AWG",  "kcmil", "mm2",     "degF",
                                                      "%",   "e", "-", "+",  ".",   "1e99", "nan",   "inf",     "0x",
                                                      "/0",  "1", "9", "\t", "lbf", "ohm",  "\n",    "\xc2\xb5"};
    std::mt19937 random(20260101);
    std::uniform_int_distribution<std::size_t> piece(0, pieces.size() - 1), count(0, 6);
    std::uniform_int_distribution<int> byte(0, 255), kind(0, 2);
    int read = 0, refused = 0;
    const auto feed = [&](const std::string& text, auto as_number) {
        try {
            const double value = as_number(text);
            EXPECT_TRUE(std::isfinite(value)) << testing::PrintToString(text);
            ++read;
        } catch (const wl::bad_text_error& e) {
            EXPECT_LE(e.position(), text.size()) << testing::PrintToString(text);
            ++refused;
        } catch (const wl::error&) {
            ++refused;
        }
    };
    for (int i = 0; i < 20000; ++i) {
        std::string text;
        const std::size_t n = count(random);
        const int how = kind(random);
        for (std::size_t k = 0; k < n; ++k) {
            if (how == 0)
                text += static_cast<char>(static_cast<unsigned char>(byte(random)));
            else
                text += pieces[piece(random)];
        }
        feed(text, [](const std::string& t) { return wl::parse<wl::current>(t).value(); });
        feed(text, [](const std::string& t) { return wl::parse<wl::length>(t).value(); });
        feed(text, [](const std::string& t) { return wl::parse<wl::temperature>(t).in_kelvin(); });
        feed(text, [](const std::string& t) { return static_cast<double>(wl::parse<wl::duty_fraction>(t)); });
        feed(text, [](const std::string& t) { return wl::parse<wl::conductor_size>(t).area().value(); });
    }
    EXPECT_GT(read, 200);
    EXPECT_GT(refused, 10000);
}
