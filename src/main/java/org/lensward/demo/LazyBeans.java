package org.lensward.demo;

import java.util.Set;
import org.springframework.beans.factory.config.BeanFactoryPostProcessor;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;

/** Makes only the beans a running record reaches; HAPI declares about a thousand. */
final class LazyBeans implements BeanFactoryPostProcessor {

    /** Must come first: it makes a listener registry that is declared by interface but injected by class. */
    private static final Set<String> EAGER = Set.of("searchParamRegistry");

    @Override
    public void postProcessBeanFactory(ConfigurableListableBeanFactory beans) {
        for (String name : beans.getBeanDefinitionNames()) {
            beans.getBeanDefinition(name).setLazyInit(!EAGER.contains(name));
        }
    }
}
