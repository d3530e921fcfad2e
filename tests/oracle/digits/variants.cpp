// Every law at its rows, printed with all digits: one line each for variants.sh to compare between compilers.
#include <cstdio>
#include <string>

#include "oracle/digits/laws.hpp"
#include "oracle/digits/rows.hpp"

int main(int count, char** arguments)
{
    if (count != 2) return 1;
    int number = 0;
    for (const auto& row : weldloop::test::digits::rows_of(arguments[1]))
        std::printf("%s %d %.17g %.3g\n", row.law.c_str(), ++number,
                    weldloop::test::digits::law_of(row.law)(row.inputs), row.allowed);
}
