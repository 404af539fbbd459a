# Rechecks and the next visit. $from, $by, $left and $over are distances with their unit.
due-recheck-by = Recheck the nuts after { $by }.
due-recheck-between = Recheck the nuts after { $from } to { $by }.
due-recheck-by-at = Recheck the nuts after { $by }, at { $at-by } on the odometer.
due-recheck-between-at = Recheck the nuts after { $from } to { $by }, at { $at-from } to { $at-by } on the odometer.
due-recheck-trade = The trade's usual distance, from one secondary source: the vehicle's own manual stands above it.
due-recheck-printed = As the vehicle's specification prints it.
due-recheck-told = As it was told to the driver.

due-visit-by = Rotate next by { $by } on the odometer.
due-visit-between = Rotate next between { $from } and { $by } on the odometer.
due-visit-no-odometer-by = Rotate next after { $by }.
due-visit-no-odometer-between = Rotate next after { $from } to { $by }.
due-visit-wear = A tire may reach its limit then.
due-visit-estimated = This starts from an estimated odometer figure.
due-visit-trade = The trade's usual interval, from memory: the vehicle's own manual stands above it.
due-visit-printed = As the vehicle's manual prints it.

due-ahead = { $left } to go.
due-now = Due now, { $left } left.
due-overdue = Overdue by { $over }.
due-not-known = The odometers can't be compared.

due-date-by = By the owner's own estimate, that is by { $by }.
due-date-between = By the owner's own estimate, that is between { $from } and { $by }.
