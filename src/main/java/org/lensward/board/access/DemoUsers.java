package org.lensward.board.access;

import java.util.List;
import java.util.Optional;
import org.springframework.security.core.userdetails.User;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;

/**
 * The demo's invented people; all have one password.
 *
 * @param password made at start, shown to whoever runs the demo
 */
public record DemoUsers(String password) implements UserDetailsService {

    /**
     * One of them.
     *
     * @param name as plans and checks will carry it
     * @param role what they do
     */
    public record Person(String name, Role role) {}

    /** Everybody. */
    public static final List<Person> PEOPLE = List.of(
            new Person("Ms Vale", Role.SURGEON),
            new Person("Nurse Lark", Role.NURSE),
            new Person("Nurse Wold", Role.NURSE),
            new Person("Mr Keel", Role.STOCK),
            new Person("Ms Fenn", Role.INTEGRATOR));

    @Override
    public UserDetails loadUserByUsername(String name) {
        Optional<Person> known =
                PEOPLE.stream().filter(each -> each.name().equals(name)).findFirst();
        return known.map(person -> User.withUsername(person.name())
                        .password("{noop}" + password)
                        .authorities(person.role().authority())
                        .build())
                .orElseThrow(() -> new UsernameNotFoundException("nobody of that name"));
    }

    @Override
    public String toString() {
        return "DemoUsers[" + PEOPLE.size() + "]";
    }
}
