package org.lensward.board.access;

import java.util.Locale;
import java.util.stream.Stream;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.SimpleGrantedAuthority;

/** What a person does here. Somebody may have several. */
public enum Role {
    /** Confirms, changes and refuses plans. */
    SURGEON,
    /** Does the lens checks. */
    NURSE,
    /** Moves cartons and orders lenses. */
    STOCK,
    /** Sees the flow of messages, replays what was parked, switches writing off. */
    INTEGRATOR;

    /** In the words of a page. */
    public String words() {
        return name().toLowerCase(Locale.ROOT);
    }

    GrantedAuthority authority() {
        return new SimpleGrantedAuthority("ROLE_" + name());
    }

    static String[] names(Role... roles) {
        return Stream.of(roles).map(Role::name).toArray(String[]::new);
    }
}
