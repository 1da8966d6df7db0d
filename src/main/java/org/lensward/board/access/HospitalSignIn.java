package org.lensward.board.access;

import java.util.Collection;
import java.util.HashSet;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.lensward.board.access.AccessSettings.People;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.oauth2.client.oidc.userinfo.OidcUserRequest;
import org.springframework.security.oauth2.client.oidc.userinfo.OidcUserService;
import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.client.registration.ClientRegistrationRepository;
import org.springframework.security.oauth2.client.registration.ClientRegistrations;
import org.springframework.security.oauth2.core.oidc.user.DefaultOidcUser;
import org.springframework.security.oauth2.core.oidc.user.OidcUser;

/** Sign-in at the hospital's identity provider (OpenID Connect), discovered when first wanted: it may be away when we start. */
final class HospitalSignIn implements ClientRegistrationRepository {

    /** The name of the way, in the address of the sign-in. */
    static final String NAME = "hospital";

    private final People people;
    private final GrantedRoles roles;
    private final AtomicReference<@Nullable ClientRegistration> discovered = new AtomicReference<>();

    HospitalSignIn(People people, GrantedRoles roles) {
        this.people = people;
        this.roles = roles;
    }

    @Override
    public @Nullable ClientRegistration findByRegistrationId(String name) {
        return NAME.equals(name) ? registration() : null;
    }

    private ClientRegistration registration() {
        return Optional.ofNullable(discovered.get()).orElseGet(() -> {
            ClientRegistration found = ClientRegistrations.fromIssuerLocation(
                            people.issuer().toString())
                    .registrationId(NAME)
                    .clientId(people.clientId())
                    .clientSecret(people.clientSecret())
                    .scope(people.scopes())
                    .build();
            discovered.set(found);
            return found;
        });
    }

    /** The person, with the roles their claim grants here; whoever has none is signed in and may see nothing. */
    OidcUser person(OidcUserRequest request) {
        OidcUser user = new OidcUserService().loadUser(request);
        Collection<GrantedAuthority> granted = new HashSet<>(roles.authorities(user.getClaim(people.rolesClaim())));
        return new DefaultOidcUser(granted, user.getIdToken(), user.getUserInfo(), people.nameClaim());
    }
}
