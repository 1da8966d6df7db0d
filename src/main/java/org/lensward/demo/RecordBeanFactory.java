package org.lensward.demo;

import org.springframework.beans.factory.config.DependencyDescriptor;
import org.springframework.beans.factory.support.AutowireCandidateResolver;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.springframework.context.annotation.ContextAnnotationAutowireCandidateResolver;
import org.springframework.data.repository.Repository;

/**
 * Injects Spring Data repositories as proxies that are resolved on first use. HAPI has some sixty of them, each parses
 * its HQL queries when it is made, and most are never called.
 */
final class RecordBeanFactory extends DefaultListableBeanFactory {

    @Override
    public void setAutowireCandidateResolver(AutowireCandidateResolver ignored) {
        super.setAutowireCandidateResolver(new LazyRepositories());
    }

    private static final class LazyRepositories extends ContextAnnotationAutowireCandidateResolver {
        @Override
        protected boolean isLazy(DependencyDescriptor descriptor) {
            return Repository.class.isAssignableFrom(descriptor.getDependencyType()) || super.isLazy(descriptor);
        }
    }
}
