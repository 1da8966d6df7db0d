package org.lensward.board.gate;

import java.time.Duration;
import java.util.Map;
import org.lensward.flow.auth.AccessMethod;
import org.lensward.flow.auth.AccessSettings;
import org.lensward.flow.auth.SigningKeys;
import org.springframework.http.CacheControl;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** The public halves of the adapter's keys (JWK Set, RFC 7517), for the record's authorization server; open to everyone. */
@RestController
final class PublicKeys {

    private final AccessSettings access;
    private final SigningKeys keys;

    PublicKeys(AccessSettings access, SigningKeys keys) {
        this.access = access;
        this.keys = keys;
    }

    @GetMapping(path = "/.well-known/jwks.json", produces = "application/json")
    ResponseEntity<Map<String, Object>> keys() {
        if (access.method() != AccessMethod.BACKEND_SERVICE) {
            return ResponseEntity.notFound().build();
        }
        return ResponseEntity.ok()
                .cacheControl(CacheControl.maxAge(Duration.ofMinutes(5)))
                .body(keys.published().toJSONObject(true));
    }
}
