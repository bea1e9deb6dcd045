// The hourly balance of a group of lanes (an option at a temperature offset each) written straight down for the compiler to vectorise:
// hours outside, lanes inside, one array a quantity. Built with g++ -O3 -march=native. Same arithmetic and same order as the engine's.
#include <algorithm>

namespace
{
constexpr int Most = 1024;

template <bool First, bool Second, bool Shades>
void season(int n, int stretches, const int *from_day, const int *to_day, const int *month, const double *const *set, const double *temp, const double *up,
            const double *sun, const double *purge_share, const unsigned char *first_of_day, const double *due_first, const double *due_second,
            const double *sun_first, const double *sun_second, const double *__restrict c, double *__restrict month_wh)
{
    const double *offset = c, *open = c + n, *add_first = c + 2 * n, *add_second = c + 3 * n, *add_both = c + 4 * n, *purge = c + 5 * n, *sun_m2 = c + 6 * n,
                 *carry = c + 7 * n, *cap = c + 8 * n, *first_on = c + 9 * n, *second_on = c + 13 * n, *first_shade = c + 12 * n, *second_shade = c + 16 * n;
    double bank[Most] = {};
    for (int s = 0; s < stretches; s++)
    {
        const double *night = set[s], *day = set[s] + n, *heated = set[s] + 2 * n;
        double *__restrict sum = month_wh + month[s] * n;
        for (int l = 0; l < n; l++)
            bank[l] *= from_day[s] == to_day[s] ? 0 : heated[l];
        for (int h = 24 * from_day[s]; h < 24 * to_day[s]; h++)
        {
            const double t = temp[h], u = up[h], r = sun[h], p = purge_share[h], d1 = due_first[h], d2 = due_second[h], s1 = sun_first[h], s2 = sun_second[h];
            const double kept = first_of_day[h] ? 0 : 1;
            for (int l = 0; l < n; l++)
            {
                const double outside = t + offset[l];
                double k = open[l];
                if (Second)
                {
                    const double f = outside < first_on[l] ? d1 : 0, g = outside < second_on[l] ? d2 : 0, both = std::min(f, g);
                    k = k + (f - both) * add_first[l] + (g - both) * add_second[l] + both * add_both[l];
                }
                else if (First)
                    k = k + (outside < first_on[l] ? d1 : 0) * add_first[l];
                const double loss = (k + purge[l] * p) * std::max(0.0, u * day[l] + (1 - u) * night[l] - outside);
                double sunshine = sun_m2[l] * heated[l] * r;
                if (Shades)
                {
                    double through = 1 - (outside < first_on[l] ? s1 : 0) * first_shade[l];
                    if (Second)
                        through *= 1 - (outside < second_on[l] ? s2 : 0) * second_shade[l];
                    sunshine *= through;
                }
                const double used = std::min(sunshine, loss);
                double wanted = loss - used;
                if (u >= 1)
                    bank[l] = bank[l] * kept + carry[l] * (sunshine - used);
                else
                {
                    const double carried = std::min(bank[l], wanted);
                    bank[l] -= carried;
                    wanted -= carried;
                }
                sum[l] += std::min(wanted, cap[l]);
            }
        }
    }
}
}

extern "C" void heat_season(int movables, int shades, int n, int stretches, const int *from_day, const int *to_day, const int *month, const double *const *set, const double *temp,
                            const double *up, const double *sun, const double *purge_share, const unsigned char *first_of_day, const double *due_first,
                            const double *due_second, const double *sun_first, const double *sun_second, const double *c, double *month_wh)
{
    auto run = movables == 2 ? (shades ? season<true, true, true> : season<true, true, false>)
             : movables == 1 ? (shades ? season<true, false, true> : season<true, false, false>)
                             : season<false, false, false>;
    run(n, stretches, from_day, to_day, month, set, temp, up, sun, purge_share, first_of_day, due_first, due_second, sun_first, sun_second, c, month_wh);
}
