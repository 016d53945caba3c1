// Plots of the test record.
#pragma once

#include "report/record.h"

namespace steamworthy::report {

/// Pressure of every gauge over time with stages, never-above and target lines; under it the
/// temperatures, if any were logged.
void trace_plots(const Papers& papers, const LoggedTest& test, paper::Flow& flow);

/// Pressure over water pumped, with the line that an airless boiler would follow. Nothing where no
/// pump-up was logged.
void pump_up_plot(const Papers& papers, const LoggedTest& test, paper::Flow& flow);

}  // namespace steamworthy::report
