# Rechecks and the next visit. $from, $by, $left and $over are distances with their unit.
due-recheck-by = Reapriete las tuercas a más tardar después de { $by }.
due-recheck-between = Reapriete las tuercas después de { $from } a { $by }.
due-recheck-by-at = Reapriete las tuercas a más tardar después de { $by }, con { $at-by } en el odómetro.
due-recheck-between-at = Reapriete las tuercas después de { $from } a { $by }, con { $at-from } a { $at-by } en el odómetro.
due-recheck-trade = Distancia usual del oficio, de una sola fuente secundaria: manda el manual del vehículo.
due-recheck-printed = Como lo imprime la especificación del vehículo.
due-recheck-told = Como se le dijo al conductor.

due-visit-by = Próxima rotación: a más tardar con { $by } en el odómetro.
due-visit-between = Próxima rotación: entre { $from } y { $by } en el odómetro.
due-visit-no-odometer-by = Próxima rotación: a más tardar después de { $by }.
due-visit-no-odometer-between = Próxima rotación: después de { $from } a { $by }.
due-visit-wear = Para entonces una llanta puede llegar a su límite.
due-visit-estimated = Parte de un odómetro estimado.
due-visit-trade = Intervalo usual del oficio, de memoria: manda el manual del vehículo.
due-visit-printed = Como lo imprime el manual del vehículo.

due-ahead = Faltan { $left }.
due-now = Toca ahora, quedan { $left }.
due-overdue = Vencido por { $over }.
due-not-known = Los odómetros no se pueden comparar.

due-date-by = Según el cálculo del dueño, a más tardar el { $by }.
due-date-between = Según el cálculo del dueño, entre el { $from } y el { $by }.
