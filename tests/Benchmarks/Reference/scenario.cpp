// The bare loop of a study written straight down for the compiler: tiles of 64 options, for every path and season the sum over twelve months of load x price,
// cumulated, discounted, the season of payback counted. Built with g++ -O3 -march=native -ffast-math -fopenmp.
// load: tile, winter, month, option (and, in the second loop, three coefficients of the offset). price: path, season, month.
#include <cstring>

namespace
{
constexpr int Tile = 64, Months = 12;

void settle(const double *saving, double *cum, double *npv, int *paid, const double *outlay, double discount, int season)
{
    for (int l = 0; l < Tile; l++)
    {
        cum[l] += saving[l];
        npv[l] += saving[l] * discount;
        if (paid[l] == 0 && cum[l] >= outlay[l])
            paid[l] = season + 1;
    }
}
}

extern "C" void scenario(int tiles, int paths, int seasons, int winters, const double *load, const double *price, const unsigned char *winter, const double *outlay,
                         const double *discount, double *npv, int *counts)
{
#pragma omp parallel for schedule(dynamic)
    for (int t = 0; t < tiles; t++)
    {
        double sum[Tile] = {};
        for (int p = 0; p < paths; p++)
        {
            double cum[Tile] = {};
            int paid[Tile] = {};
            for (int s = 0; s < seasons; s++)
            {
                const double *row = load + (size_t)(t * winters + winter[p * seasons + s]) * Months * Tile;
                const double *pay = price + (size_t)(p * seasons + s) * Months;
                double saving[Tile] = {};
                for (int m = 0; m < Months; m++)
                    for (int l = 0; l < Tile; l++)
                        saving[l] += row[m * Tile + l] * pay[m];
                settle(saving, cum, sum, paid, outlay + t * Tile, discount[s], s);
            }
            for (int l = 0; l < Tile; l++)
                counts[(t * Tile + l) * (seasons + 1) + paid[l]]++;
        }
        std::memcpy(npv + t * Tile, sum, sizeof sum);
    }
}

extern "C" void scenario_offset(int tiles, int paths, int seasons, int winters, const double *load, const double *price, const unsigned char *winter,
                                const double *outlay, const double *discount, double *npv, int *counts, const double *offset)
{
#pragma omp parallel for schedule(dynamic)
    for (int t = 0; t < tiles; t++)
    {
        double sum[Tile] = {};
        for (int p = 0; p < paths; p++)
        {
            double cum[Tile] = {};
            int paid[Tile] = {};
            for (int s = 0; s < seasons; s++)
            {
                const double *row = load + (size_t)(t * winters + winter[p * seasons + s]) * Months * 3 * Tile;
                const double *pay = price + (size_t)(p * seasons + s) * Months;
                const double o = offset[p * seasons + s];
                double saving[Tile] = {};
                for (int m = 0; m < Months; m++)
                {
                    const double *a = row + m * 3 * Tile, *b = a + Tile, *c = b + Tile;
                    for (int l = 0; l < Tile; l++)
                    {
                        const double demand = a[l] + o * (b[l] + o * c[l]);
                        saving[l] += (demand > 0 ? demand : 0) * pay[m];
                    }
                }
                settle(saving, cum, sum, paid, outlay + t * Tile, discount[s], s);
            }
            for (int l = 0; l < Tile; l++)
                counts[(t * Tile + l) * (seasons + 1) + paid[l]]++;
        }
        std::memcpy(npv + t * Tile, sum, sizeof sum);
    }
}
