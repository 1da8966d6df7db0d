package org.lensward.board.access;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.security.authentication.AnonymousAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;

/**
 * Who is acting now.
 *
 * @param name the person's name, as plans and checks will carry it, or the program's id
 * @param roles what they may do
 * @param person whether a person is known; a program that acts for nobody in particular must say whom it acts for
 */
public record SignedIn(String name, Set<Role> roles, boolean person) {

    /** Whoever is acting on this thread; empty where nobody has signed in. */
    public static Optional<SignedIn> now() {
        return Optional.ofNullable(SecurityContextHolder.getContext().getAuthentication())
                .filter(each -> each instanceof Program || !(each instanceof AnonymousAuthenticationToken))
                .map(SignedIn::of);
    }

    private static SignedIn of(Authentication authentication) {
        Set<String> granted = authentication.getAuthorities().stream()
                .map(each -> String.valueOf(each.getAuthority()))
                .collect(Collectors.toSet());
        Set<Role> roles = Stream.of(Role.values())
                .filter(role -> granted.contains("ROLE_" + role.name()))
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Role.class)));
        return new SignedIn(authentication.getName(), roles, !(authentication instanceof Program));
    }

    public boolean is(Role role) {
        return roles.contains(role);
    }

    /** The roles in words. */
    public String does() {
        return roles.stream().map(Role::words).collect(Collectors.joining(", "));
    }

    /**
     * The name that what is written will carry. A person who has signed in acts in no other name; a program says whom it acts for.
     *
     * @param told the name the request gives
     * @throws NotYourName where a signed-in person gives another's name
     */
    public static String actor(String told) {
        Optional<String> own = now().filter(SignedIn::person).map(SignedIn::name);
        if (own.isPresent() && !told.isBlank() && !told.equals(own.get())) {
            throw new NotYourName();
        }
        return own.orElse(told);
    }
}
