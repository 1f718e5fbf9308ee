#include "trade/tables/gauges.hpp"

#include "ohmtrail/trade/gauge.hpp"

namespace ohmtrail::trade::tables {

units::Area sae_area(const SaeRow& row) {
  return row.circular_mils > 0 ? area_from_circular_mils(row.circular_mils)
                               : units::Area{row.square_millimetres * 1e-6};
}

}  // namespace ohmtrail::trade::tables
