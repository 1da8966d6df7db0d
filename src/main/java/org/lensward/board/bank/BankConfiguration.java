package org.lensward.board.bank;

import ca.uhn.fhir.context.FhirContext;
import java.time.Clock;
import org.lensward.board.api.BankDesk;
import org.lensward.board.store.BankSettings;
import org.lensward.board.store.StockDesk;
import org.lensward.board.store.StoreWatch;
import org.lensward.flow.RecordClient;
import org.lensward.plan.Policy;
import org.lensward.record.bank.BankView;
import org.lensward.record.bank.LensBank;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The Bank page, and what it shares with the calls of programs. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(BankSettings.class)
@Import({BankPage.class, CartonPage.class, GoodsInPage.class, RecallPage.class})
public class BankConfiguration {

    @Bean
    StockDesk stockDesk(RecordClient client, Policy policy, Clock clock) {
        return new StockDesk(client, policy, clock);
    }

    @Bean
    StoreWatch storeWatch(FhirContext fhir, RecordClient client, StockDesk desk, BankSettings settings, Clock clock) {
        return new StoreWatch(new BankView(fhir, client, clock), desk, settings, clock);
    }

    @Bean
    BankDesk bankDesk(LensBank bank, StoreWatch watch, Clock clock) {
        return new BankDesk(bank, watch, clock);
    }

    @Bean
    SheetMaker sheetMaker(Policy policy, BankSettings settings, Clock clock) {
        return new SheetMaker(policy, settings, clock);
    }
}
