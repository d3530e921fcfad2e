// my_reader.cpp
#include <iostream>
#include <weldloop/io/station/station_file.hpp>

int main(int, char** words)
{
    const weldloop::station bench = weldloop::read_station(words[1]);
    std::cout << bench.name << ": " << bench.path.size() << " parts in its path\n";
}
