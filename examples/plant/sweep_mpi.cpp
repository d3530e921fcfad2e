// Sweeps a plant's stations over processes, which may stand on several machines: mpirun -n 2 sweep_mpi [BENCHES].
// Process k of n takes the benches k, k+n, k+2n, ...; the first gathers the answers, prints them and, on the other
// output, the time.
#include <cstddef>
#include <exception>
#include <iostream>
#include <stdexcept>
#include <vector>

#include <mpi.h>

#include "plant.hpp"

namespace {

// Lengths and begins of what each process sends, in bytes.
struct shares {
    std::vector<int> bytes, from;
    std::size_t rows = 0;
};

shares shares_of(std::size_t benches, std::size_t processes)
{
    shares out;
    for (std::size_t k = 0; k < processes; ++k) {
        const std::size_t own = k < benches ? (benches - k - 1) / processes + 1 : 0;
        out.from.push_back(static_cast<int>(out.rows * sizeof(plant::row)));
        out.bytes.push_back(static_cast<int>(own * sizeof(plant::row)));
        out.rows += own;
    }
    return out;
}

int sweep(int words, char** word)
{
    int process = 0, processes = 1;
    MPI_Comm_rank(MPI_COMM_WORLD, &process);
    MPI_Comm_size(MPI_COMM_WORLD, &processes);
    const std::size_t benches = plant::count_of(words, word, 1, 2000);
    // lengths travel as int
    constexpr std::size_t most = 10'000'000;
    if (benches > most) throw std::invalid_argument("more than 10000000 benches");

    MPI_Barrier(MPI_COMM_WORLD);
    const double begin = MPI_Wtime(), used_before = plant::processor_seconds();
    std::vector<plant::row> own;
    for (auto n = static_cast<std::size_t>(process); n < benches; n += static_cast<std::size_t>(processes))
        own.push_back(plant::swept(n));

    const double used = plant::processor_seconds() - used_before;  // before others are waited for, which burns it

    const shares all = shares_of(benches, static_cast<std::size_t>(processes));
    std::vector<plant::row> rows(process == 0 ? benches : 0);
    MPI_Gatherv(own.data(), static_cast<int>(own.size() * sizeof(plant::row)), MPI_BYTE, rows.data(), all.bytes.data(),
                all.from.data(), MPI_BYTE, 0, MPI_COMM_WORLD);
    double in_all = 0.0, busiest = 0.0;
    MPI_Reduce(&used, &in_all, 1, MPI_DOUBLE, MPI_SUM, 0, MPI_COMM_WORLD);
    MPI_Reduce(&used, &busiest, 1, MPI_DOUBLE, MPI_MAX, 0, MPI_COMM_WORLD);
    if (process == 0) {
        const double took = MPI_Wtime() - begin;
        plant::print(rows, std::cout);
        std::cerr << benches << " benches, " << processes << " processes: " << took << " s, "
                  << static_cast<double>(benches) / took << " benches/s, processor time in all " << in_all
                  << " s, of the busiest " << busiest << " s\n";
    }
    return 0;
}

}  // namespace

int main(int words, char** word)
{
    MPI_Init(&words, &word);
    int status = 0;
    try {
        status = sweep(words, word);
    } catch (const std::exception& e) {
        std::cerr << "sweep_mpi: " << e.what() << "\nusage: mpirun -n PROCESSES sweep_mpi [BENCHES]\n";
        MPI_Abort(MPI_COMM_WORLD, 2);  // the others would wait for this one
    }
    MPI_Finalize();
    return status;
}
