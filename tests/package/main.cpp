// A user's program: the drop over a joint. Fails if the number is wrong.
#include <iostream>
#include <string>

#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    const wl::resistance joint = 500_uohm;
    const std::string drop = wl::to_text(joint * 240_A, "mV");
    std::cout << "weldloop " << wl::version_major << '.' << wl::version_minor << ": " << drop << '\n';
    return drop == "120 mV" ? 0 : 1;
}
