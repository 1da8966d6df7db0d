package org.lensward.flow;

import java.util.Locale;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.Subscription;
import org.hl7.fhir.r4.model.Subscription.SubscriptionChannelType;
import org.hl7.fhir.r4.model.Subscription.SubscriptionStatus;

/**
 * The Subscriptions (FHIR R4, channel {@code rest-hook}) that hint at changes: one for each type that is watched, without payload, under
 * lasting ids. Whoever may read Subscriptions in the record reads the secret in them.
 */
final class HintSubscriptions {

    private HintSubscriptions() {}

    static Bundle transaction(HintSettings settings) {
        Bundle bundle = new Bundle().setType(BundleType.TRANSACTION);
        for (String type : Watcher.WATCHED) {
            String id = "lensward-hint-" + type.toLowerCase(Locale.ROOT);
            bundle.addEntry()
                    .setResource(subscription(settings, type).setId(id))
                    .getRequest()
                    .setMethod(HTTPVerb.PUT)
                    .setUrl("Subscription/" + id);
        }
        return bundle;
    }

    private static Subscription subscription(HintSettings settings, String type) {
        Subscription subscription = new Subscription();
        subscription
                .setStatus(SubscriptionStatus.REQUESTED)
                .setReason("Lensward looks at the record when something changes")
                .setCriteria(type + "?");
        subscription
                .getChannel()
                .setType(SubscriptionChannelType.RESTHOOK)
                .setEndpoint(settings.endpoint())
                .addHeader(HintSettings.HEADER + ": " + settings.secret().reveal());
        return subscription;
    }
}
