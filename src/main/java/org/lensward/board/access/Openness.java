package org.lensward.board.access;

import java.net.InetAddress;
import java.util.Optional;
import org.springframework.boot.autoconfigure.web.ServerProperties;

/** Whether anybody at this machine may come in without signing in. */
record Openness(boolean open) {

    /**
     * As the settings say.
     *
     * @throws IllegalStateException where others could reach an open server
     */
    static Openness of(AccessSettings settings, ServerProperties server) {
        boolean own = Optional.ofNullable(server.getAddress())
                .map(InetAddress::isLoopbackAddress)
                .orElse(false);
        if (settings.open() && !own) {
            throw new IllegalStateException("lensward.access.open lets everybody in without signing in."
                    + " It is refused unless server.address is this machine's own, 127.0.0.1.");
        }
        return new Openness(settings.open());
    }
}
