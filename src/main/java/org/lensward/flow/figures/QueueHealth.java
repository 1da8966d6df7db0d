package org.lensward.flow.figures;

import org.springframework.boot.actuate.health.Health;
import org.springframework.boot.actuate.health.HealthIndicator;

/** Whether our own broker runs; a broker of the hospital's is not ours to judge. */
final class QueueHealth implements HealthIndicator {

    private final Queues queues;

    QueueHealth(Queues queues) {
        this.queues = queues;
    }

    @Override
    public Health health() {
        if (!queues.areOurs()) {
            return Health.unknown().build();
        }
        Health.Builder health = queues.areOpen() ? Health.up() : Health.down();
        Queues.ALL.forEach(each -> health.withDetail(each, queues.depth(each)));
        return health.build();
    }
}
