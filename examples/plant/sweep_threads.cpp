// Sweeps a plant's stations on one machine: sweep_threads [BENCHES] [THREADS]. The answers go to the standard output,
// the time to the other. With the standard parallel algorithms where the build found what they need, else with threads.
#include <algorithm>
#include <atomic>
#include <chrono>
#include <cstddef>
#include <exception>
#include <iostream>
#include <numeric>
#include <thread>
#include <vector>

#ifdef PLANT_WITH_PARALLEL_ALGORITHMS
#include <execution>

#include <tbb/global_control.h>
#endif

#include "plant.hpp"

namespace {

#ifdef PLANT_WITH_PARALLEL_ALGORITHMS
constexpr const char* means = "std::execution::par";

std::vector<plant::row> sweep(std::size_t benches, std::size_t threads)
{
    const tbb::global_control at_most(tbb::global_control::max_allowed_parallelism, threads);
    std::vector<std::size_t> numbers(benches);
    std::iota(numbers.begin(), numbers.end(), std::size_t{0});
    std::vector<plant::row> out(benches);
    std::transform(std::execution::par, numbers.begin(), numbers.end(), out.begin(), plant::swept);
    return out;
}
#else
constexpr const char* means = "std::thread";

// Each thread takes the next bench that nobody has, so that long ones hold up nobody.
std::vector<plant::row> sweep(std::size_t benches, std::size_t threads)
{
    std::vector<plant::row> out(benches);
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        for (std::size_t n = next++; n < benches; n = next++) out[n] = plant::swept(n);
    };
    std::vector<std::thread> others;
    for (std::size_t t = 1; t < threads; ++t) others.emplace_back(work);
    work();
    for (std::thread& t : others) t.join();
    return out;
}
#endif

}  // namespace

int main(int words, char** word)
{
    try {
        const std::size_t benches = plant::count_of(words, word, 1, 2000);
        const std::size_t threads =
            plant::count_of(words, word, 2, std::max<std::size_t>(std::thread::hardware_concurrency(), 1));
        const auto begin = std::chrono::steady_clock::now();
        const std::vector<plant::row> rows = sweep(benches, threads);
        const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
        plant::print(rows, std::cout);
        std::cerr << benches << " benches, " << threads << " threads by " << means << ": " << took.count() << " s, "
                  << static_cast<double>(benches) / took.count() << " benches/s, processor time in all "
                  << plant::processor_seconds() << " s\n";
    } catch (const std::exception& e) {
        std::cerr << "sweep_threads: " << e.what() << "\nusage: sweep_threads [BENCHES] [THREADS]\n";
        return 2;
    }
}
