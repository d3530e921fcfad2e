#pragma once
// The words of the program, one unit each.
#include "call.hpp"

namespace program {

extern const word assess_word, fault_word, lead_word, chart_word, card_word;

}  // namespace program
