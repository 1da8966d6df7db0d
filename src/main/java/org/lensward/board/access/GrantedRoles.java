package org.lensward.board.access;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.GrantedAuthority;

/** Reads roles from a claim: a list, or words with spaces between. What it does not know grants nothing. */
final class GrantedRoles {

    private final Map<String, Role> known;

    GrantedRoles(Map<String, Role> known) {
        this.known = known;
    }

    Set<Role> of(@Nullable Object claim) {
        return words(claim).flatMap(word -> role(word).stream()).collect(Collectors.toSet());
    }

    Set<GrantedAuthority> authorities(@Nullable Object claim) {
        return of(claim).stream().map(Role::authority).collect(Collectors.toSet());
    }

    private Optional<Role> role(String word) {
        return Optional.ofNullable(known.get(word)).or(() -> Stream.of(Role.values())
                .filter(role -> role.words().equals(word))
                .findFirst());
    }

    private static Stream<String> words(@Nullable Object claim) {
        if (claim instanceof Collection<?> list) {
            return list.stream().map(String::valueOf);
        }
        return claim instanceof String text ? Stream.of(text.split(" ")) : Stream.empty();
    }
}
