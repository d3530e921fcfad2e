#pragma once
// The words of the program, one unit each.
#include "call.hpp"

namespace program {

extern const word assess_word, fault_word, lead_word, chart_word, card_word, sheet_word, survey_word, trend_word;

}  // namespace program
