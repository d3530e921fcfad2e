// Small kernels twice, with quantities and with bare numbers, each behind pointers so that both are called alike;
// bench/machine_code.sh compares what a compiler makes of them. The first of a pair ends in _units, the second in
// _bare.
#include <cmath>
#include <string_view>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/constriction.hpp>
#include <weldloop/material/metal.hpp>

using namespace weldloop;

// a metal as numbers, in the places where the library has them
struct bare_metal {
    std::string_view name;
    double resistivity, slope, density, specific_heat;
};

extern "C" {

void drop_units(const current* i, const resistance* r, voltage* out)
{
    *out = *i * *r;
}
void drop_bare(const double* i, const double* r, double* out)
{
    *out = *i * *r;
}

void current_through_units(const voltage* v, const resistance* r, current* out)
{
    *out = *v / *r;
}
void current_through_bare(const double* v, const double* r, double* out)
{
    *out = *v / *r;
}

void heat_made_units(const current* i, const resistance* r, power* out)
{
    *out = *i * *i * *r;
}
void heat_made_bare(const double* i, const double* r, double* out)
{
    *out = *i * *i * *r;
}

void two_in_parallel_units(const resistance* a, const resistance* b, resistance* out)
{
    *out = 1.0 / (1.0 / *a + 1.0 / *b);
}
void two_in_parallel_bare(const double* a, const double* b, double* out)
{
    *out = 1.0 / (1.0 / *a + 1.0 / *b);
}

void sum_of_drops_units(const voltage* drops, int count, voltage* out)
{
    voltage sum{};
    for (int k = 0; k < count; ++k) sum += drops[k];
    *out = sum;
}
void sum_of_drops_bare(const double* drops, int count, double* out)
{
    double sum = 0;
    for (int k = 0; k < count; ++k) sum += drops[k];
    *out = sum;
}

void difference_units(const temperature* a, const temperature* b, temperature_difference* out)
{
    *out = *a - *b;
}
void difference_bare(const double* a, const double* b, double* out)
{
    *out = *a - *b;
}

bool is_hotter_units(const temperature* a, const temperature* b)
{
    return *a > *b;
}
bool is_hotter_bare(const double* a, const double* b)
{
    return *a > *b;
}

void hotter_by_units(const temperature* a, const temperature_difference* d, temperature* out)
{
    *out = *a + *d;
}
void hotter_by_bare(const double* a, const double* d, double* out)
{
    *out = *a + *d;
}

void resistivity_at_units(const metal* m, const temperature* t, resistivity* out)
{
    *out = m->resistivity_at(*t);
}
void resistivity_at_bare(const bare_metal* m, const double* kelvin, double* out)
{
    const double factor = 1.0 + m->slope * (*kelvin - 293.15);
    *out = m->resistivity * (factor > 0.01 ? factor : 0.01);
}

void heat_per_volume_units(const metal* m, volumetric_heat* out)
{
    *out = m->heat_per_volume();
}
void heat_per_volume_bare(const bare_metal* m, double* out)
{
    *out = m->density * m->specific_heat;
}

void lead_resistance_units(const resistivity* rho, const length* l, const area* a, resistance* out)
{
    *out = *rho * *l / *a;
}
void lead_resistance_bare(const double* rho, const double* l, const double* a, double* out)
{
    *out = *rho * *l / *a;
}

void constriction_units(const resistivity* first, const resistivity* second, const length* radius, resistance* out)
{
    *out = (*first + *second) / (4.0 * *radius);
}
void constriction_bare(const double* first, const double* second, const double* radius, double* out)
{
    *out = (*first + *second) / (4.0 * *radius);
}

void checked_constriction_units(const resistivity* rho, const length* radius, resistance* out)
{
    *out = constriction_resistance(*rho, *radius);
}
void checked_constriction_bare(const double* rho, const double* radius, double* out)
{
    *out = *rho / (2.0 * *radius);
}
}
